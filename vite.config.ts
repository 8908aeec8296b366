import preact from '@preact/preset-vite';
import { defineConfig, type Plugin } from 'vite';

/**
 * Lists every built file for the service worker, under a version that changes with any of them. A page of this size
 * needs no more; the usual plugin brings 279 packages.
 */
function offlineList(): Plugin {
  return {
    name: 'tubwright-offline-list',
    apply: 'build',
    generateBundle(_options, bundle) {
      const files = Object.keys(bundle).filter((file) => !file.endsWith('.map'));
      this.emitFile({ type: 'asset', fileName: 'offline.json', source: JSON.stringify({ files: files.sort() }) });
    },
  };
}

export default defineConfig({
  root: 'src/app',
  base: '/',
  publicDir: 'public',
  plugins: [preact(), offlineList()],
  worker: { format: 'es' },
  build: { outDir: '../../dist/app', emptyOutDir: true, target: 'es2022', assetsInlineLimit: 0 },
});
