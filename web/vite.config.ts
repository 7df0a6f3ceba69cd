import { svelte } from '@sveltejs/vite-plugin-svelte';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

/** The page's own folder, so that the build can be called from anywhere. */
const here = fileURLToPath(new URL('.', import.meta.url));

export default defineConfig({
  root: here,
  plugins: [svelte()],
  build: {
    outDir: '../dist/web',
    emptyOutDir: true,
    /** The page runs under a policy without data: addresses, so nothing is written into the style sheet. */
    assetsInlineLimit: 0,
  },
  server: { proxy: { '/api': process.env['HOOPWRIGHT_API'] ?? 'http://127.0.0.1:8080' } },
});
