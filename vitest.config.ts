import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'unit',
          include: [
            'packages/*/src/**/*.test.ts',
            'apps/{server,command}/src/**/*.test.ts',
            'apps/web/src/**/*.test.ts',
            'checks/**/*.test.ts',
            '{demo,cases,scripts}/**/*.test.ts',
            'test/**/*.test.ts',
          ],
          testTimeout: 60_000,
        },
      },
      {
        test: {
          name: 'browser',
          include: ['browser/**/*.test.ts'],
          globalSetup: ['browser/setup.ts'],
          testTimeout: 90_000,
          hookTimeout: 90_000,
          fileParallelism: false,
        },
      },
    ],
  },
});
