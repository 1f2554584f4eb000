import { mkdirSync } from 'node:fs';
import { serve } from '@hono/node-server';
import { readBook } from '@twistwright/contract';
import { openSolver } from '@twistwright/solver/node';
import { isPostgres, openStore } from '@twistwright/store';
import { date } from '@twistwright/units';
import { makeApp } from './app.ts';
import { greeting } from './greeting.ts';
import { settingsFrom } from './settings.ts';

const settings = settingsFrom(process.env);
mkdirSync(settings.dataFolder, { recursive: true });
const store = await openStore(settings.database, (value) => {
  const read = readBook(JSON.stringify(value), { name: 'database.json', maxBytes: Number.POSITIVE_INFINITY });
  if (!read.ok) throw new Error(`the database holds something that is no book: ${read.error[0]?.sentence}`);
  return read.value;
});
const solver = openSolver();
const today = (zone: string) => date(Temporal.Now.plainDateISO(zone).toString());
const app = makeApp({
  store,
  storeKind: isPostgres(settings.database) ? 'postgresql' : 'sqlite',
  solver,
  today,
  now: () => performance.now(),
  log: (message) => console.error(message),
  allowedHosts: settings.allowedHosts,
  webFolder: settings.webFolder,
  demoFolder: settings.demoFolder,
  version: settings.version,
});
const server = serve({ fetch: app.fetch, hostname: settings.host, port: settings.port }, (address) => {
  void greeting(store, solver, settings.demoFolder, today, `http://localhost:${address.port}`).then((text) => console.log(text));
});
server.on('error', (error: NodeJS.ErrnoException) => {
  console.error(error.code === 'EADDRINUSE' ? `Port ${settings.port} is taken: set PORT to another one.` : String(error));
  process.exit(1);
});

let isStopping = false;
for (const signal of ['SIGINT', 'SIGTERM'] as const)
  process.on(signal, () => {
    if (isStopping) return;
    isStopping = true;
    server.close(async () => {
      await solver.close();
      await store.close();
      process.exit(0);
    });
    if ('closeAllConnections' in server) setTimeout(() => server.closeAllConnections(), 2000).unref();
  });
