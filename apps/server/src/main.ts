import { keepCompiled } from './keep-compiled.ts';

keepCompiled();
await import('./serve.ts');
