import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

/** Bundles the bench as the server is bundled, so that what is timed is what runs. */
export default defineConfig({
  root: fileURLToPath(new URL('../..', import.meta.url)),
  publicDir: false,
  build: {
    ssr: 'tests/bench/run.ts',
    target: 'node20',
    outDir: 'dist/bench',
    emptyOutDir: true,
  },
});
