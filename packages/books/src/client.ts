import type { Contact } from './business.ts';

export interface Client {
  readonly id: string;
  readonly name: string;
  readonly contact?: Contact;
}
