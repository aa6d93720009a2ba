import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { defineConfig, type Plugin } from 'vite';

/** What the service worker keeps on the device: the addresses of a build's files, and a name for their contents. */
export interface Kept {
  version: string;
  files: string[];
}
const WORKER = 'service-worker.js';

/** Tells the service worker which files this build has written. */
function keptFiles(): Plugin {
  let publicDir = '';
  return {
    name: 'kept-files',
    enforce: 'post',
    configResolved(config) {
      publicDir = config.publicDir;
    },
    generateBundle(_options, bundle) {
      const worker = bundle[WORKER];
      if (worker?.type !== 'chunk') return;
      const hash = createHash('sha256');
      const files: string[] = [];
      const keep = (file: string, content: string | Uint8Array) => {
        files.push(file === 'index.html' ? '/' : `/${file}`);
        hash.update(file).update(content);
      };
      for (const [name, file] of Object.entries(bundle).sort(([a], [b]) => (a < b ? -1 : 1)))
        if (name !== WORKER) keep(name, file.type === 'chunk' ? file.code : file.source);
      for (const name of readdirSync(publicDir).sort()) keep(name, readFileSync(join(publicDir, name)));
      const kept: Kept = { version: hash.digest('hex').slice(0, 12), files };
      worker.code = worker.code.replaceAll('__KEPT__', `(${JSON.stringify(kept)})`);
    },
  };
}

export default defineConfig({
  root: 'web',
  build: {
    outDir: '../dist/web',
    emptyOutDir: true,
    target: 'es2022',
    chunkSizeWarningLimit: 8000,
    rolldownOptions: {
      input: { index: 'web/index.html', 'service-worker': 'web/service-worker.ts' },
      output: {
        // Its address must stay the same from build to build.
        entryFileNames: (chunk) => (chunk.name === 'service-worker' ? WORKER : 'assets/[name]-[hash].js'),
      },
    },
  },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  plugins: [keptFiles()],
});
