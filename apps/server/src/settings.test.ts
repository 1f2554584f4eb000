import { expect, test } from 'vitest';
import { hostNameOf } from './same-origin.ts';
import { settingsFrom } from './settings.ts';

test('loopback and an embedded database unless the environment says otherwise', () => {
  const settings = settingsFrom({});
  expect([settings.host, settings.database.endsWith('book.sqlite')]).toEqual(['127.0.0.1', true]);
  expect(settingsFrom({ DATABASE_URL: 'postgres://x/y', ALLOWED_HOSTS: 'a.example, b.example' })).toMatchObject({
    database: 'postgres://x/y',
    allowedHosts: ['a.example', 'b.example'],
  });
});
test('a port that is none is named', () => expect(() => settingsFrom({ PORT: 'eighty' })).toThrow('PORT'));
test('threads, places to wait and seconds have sensible numbers, and others are refused by name', () => {
  const { threads, queue, jobSeconds } = settingsFrom({});
  expect([threads >= 2 && threads <= 4, queue, jobSeconds]).toEqual([true, 32, 60]);
  expect(settingsFrom({ THREADS: '1', QUEUE: '0', JOB_SECONDS: '5' })).toMatchObject({ threads: 1, queue: 0, jobSeconds: 5 });
  expect(() => settingsFrom({ THREADS: '0' })).toThrow('THREADS');
});
test('names with and without port', () =>
  expect(['localhost:3000', 'http://[::1]:5', ''].map(hostNameOf)).toEqual(['localhost', '[::1]', undefined]));
