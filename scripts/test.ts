// The whole test command: lint, types, unit and outside checks, browser. Ends with one plain line "N passed, N failed".
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { ensureBrowser, ensurePostgres } from './machine.ts';

const root = resolve(import.meta.dirname, '..');
const folder = mkdtempSync(join(tmpdir(), 'twistwright-test-'));
const report = join(folder, 'report.json');

function run(command: string, words: readonly string[], env: Readonly<Record<string, string>> = {}): boolean {
  const { status } = spawnSync(join(root, 'node_modules/.bin', command), words, {
    cwd: root,
    stdio: 'inherit',
    env: { ...process.env, ...env },
  });
  return status === 0;
}

function count(): { readonly passed: number; readonly failed: number } {
  try {
    const { numPassedTests, numFailedTests, testResults } = JSON.parse(readFileSync(report, 'utf8')) as {
      numPassedTests: number;
      numFailedTests: number;
      testResults: readonly { readonly status: string; readonly assertionResults: readonly unknown[] }[];
    };
    const brokenFiles = testResults.filter((file) => file.status === 'failed' && file.assertionResults.length === 0).length;
    return { passed: numPassedTests, failed: numFailedTests + brokenFiles };
  } catch {
    return { passed: 0, failed: 1 }; // the runner ended before it could write its report
  }
}

ensureBrowser();
const postgres = ensurePostgres();
const lint = run('biome', ['check', '.']);
const types = run('tsc', ['-b']);
const tests = run('vitest', ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${report}`], { TEST_POSTGRES: postgres });
const { passed, failed } = count();
rmSync(folder, { recursive: true, force: true });
const gates = [lint, types];
const allPassed = passed + gates.filter(Boolean).length;
const allFailed = Math.max(failed, tests ? 0 : 1) + gates.filter((gate) => !gate).length;
if (!lint) console.log('Lint found something: see above.');
if (!types) console.log('Types do not fit: see above.');
console.log(`${allPassed} passed, ${allFailed} failed`);
process.exit(allFailed === 0 ? 0 : 1);
