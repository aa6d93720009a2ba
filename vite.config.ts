import { defineConfig } from 'vite';

export default defineConfig({
  root: 'web',
  build: { outDir: '../dist/web', emptyOutDir: true, target: 'es2022', chunkSizeWarningLimit: 8000 },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
});
