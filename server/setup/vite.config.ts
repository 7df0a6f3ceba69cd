import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Bundles the server and the command line; packages stay outside, so that each finds its own files. */
export default defineConfig({
  root,
  publicDir: false,
  build: {
    ssr: true,
    target: 'node20',
    outDir: 'dist/server',
    emptyOutDir: true,
    sourcemap: true,
    rolldownOptions: {
      input: {
        main: 'server/main.ts',
        cli: 'server/cli.ts',
        'step-worker': 'server/exports/step-worker.ts',
        'nesting-worker': 'server/nesting/nesting-worker.ts',
      },
      // all beside each other, so that a file finds the worker in the same place whichever file it was put into
      output: { chunkFileNames: '[name]-[hash].js' },
    },
  },
});
