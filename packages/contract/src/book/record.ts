import { z } from 'zod';

/** Texts by text. `__proto__` is no key: it would not be a key of the object that comes out. */
export const byText = <V extends z.ZodType>(value: V) =>
  z.record(
    z
      .string()
      .min(1)
      .max(120)
      .regex(/^(?!__proto__$)/),
    value,
  );
