import { mkdirSync } from 'node:fs';
import { serve } from '@hono/node-server';
import { bookSchema, readInput } from '@twistwright/contract';
import { isPostgres, openStore } from '@twistwright/store';
import { date } from '@twistwright/units';
import { makeApp } from './app.ts';
import { greeting } from './greeting.ts';
import { openJobs } from './jobs/open-jobs.ts';
import { BookShelf } from './keep-book.ts';
import { settingsFrom } from './settings.ts';

const settings = settingsFrom(process.env);
mkdirSync(settings.dataFolder, { recursive: true });
const store = await openStore(settings.database, (value) => {
  const read = readInput(bookSchema, value);
  if (!read.ok) throw new Error(`the database holds something that is no book: ${read.error[0]?.sentence}`);
  return read.value;
});
const shelf = new BookShelf(store);
const jobs = openJobs({ threads: settings.threads, queue: settings.queue, seconds: settings.jobSeconds });
const today = (zone: string) => date(Temporal.Now.plainDateISO(zone).toString());
const app = makeApp({
  store,
  shelf,
  storeKind: isPostgres(settings.database) ? 'postgresql' : 'sqlite',
  jobs,
  today,
  log: (message) => console.error(message),
  allowedHosts: settings.allowedHosts,
  webFolder: settings.webFolder,
  demoFolder: settings.demoFolder,
  version: settings.version,
});
const server = serve({ fetch: app.fetch, hostname: settings.host, port: settings.port }, (address) => {
  const url = `http://localhost:${address.port}`;
  // The page works without the sentences about the next gig, so a failure there is said and does not end the server.
  const told = greeting(shelf, jobs, settings.demoFolder, Temporal.Now.instant().toString(), url).then(
    (text) => console.log(text),
    (error: Error) => console.error(`${error.stack ?? error.message}\nOpen ${url}`),
  );
  // The first page wants pictures, and the first change of the book is looked at: their thread gets ready once the start is over.
  void told.then(() => jobs.warm());
});
server.on('error', (error: NodeJS.ErrnoException) => {
  console.error(error.code === 'EADDRINUSE' ? `Port ${settings.port} is taken: set PORT to another one.` : String(error));
  process.exit(1);
});

/** Seconds in which requests that are being worked on may still be answered when the server is asked to stop. */
const drainSeconds = 10;
let isStopping = false;
for (const signal of ['SIGINT', 'SIGTERM'] as const)
  process.on(signal, () => {
    if (isStopping) process.exit(1);
    isStopping = true;
    server.close(async () => {
      await jobs.close();
      await store.close();
      process.exit(0);
    });
    if ('closeIdleConnections' in server) server.closeIdleConnections();
    if ('closeAllConnections' in server) setTimeout(() => server.closeAllConnections(), drainSeconds * 1000).unref();
  });
