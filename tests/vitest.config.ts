import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  /** The page's controllers are written with runes, which only its compiler knows. */
  plugins: [svelte({ configFile: false })],
  test: {
    root: '.',
    include: ['tests/**/*.test.ts'],
    setupFiles: ['tests/seed.ts'],
    environment: 'node',
    // no test leaves anything behind in a module, and reading the modules once saves half of the time
    isolate: false,
    // the tests are work for a processor, not waiting: one for each of two
    maxWorkers: 2,
    testTimeout: 120_000,
    hookTimeout: 120_000,
  },
});
