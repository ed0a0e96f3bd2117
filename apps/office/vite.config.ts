// How the pages are built: from this folder into .build/office, which the service hands out.

import path from 'node:path';
import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';

const FIRST = 'first-reads';

/** Puts the first reads before all other code, as a script of their own that waits for nothing. */
const firstReads: Plugin = {
  name: FIRST,
  apply: 'build',
  transformIndexHtml: {
    order: 'post',
    handler: (_, { bundle = {} }) => {
      const chunk = Object.values(bundle).find(
        (each) => each.type === 'chunk' && each.name === FIRST,
      );
      if (chunk?.type !== 'chunk') throw new Error('the first reads were not built');
      const part = (file: string) => ({
        crossorigin: true,
        href: `/${file}`,
        rel: 'modulepreload',
      });
      return [
        {
          tag: 'script',
          attrs: { type: 'module', crossorigin: true, src: `/${chunk.fileName}` },
          injectTo: 'head-prepend',
        },
        ...chunk.imports.map((file) => ({
          tag: 'link',
          attrs: part(file),
          injectTo: 'head-prepend' as const,
        })),
      ];
    },
  },
};

export default defineConfig({
  root: import.meta.dirname,
  plugins: [react(), firstReads],
  resolve: { conditions: ['gauge-source', 'module', 'browser', 'development|production'] },
  build: {
    outDir: '../../.build/office',
    emptyOutDir: true,
    target: 'es2022',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    rollupOptions: {
      input: {
        index: path.join(import.meta.dirname, 'index.html'),
        [FIRST]: path.join(import.meta.dirname, `${FIRST}.ts`),
      },
      output: {
        // What every page takes in comes in one piece, not in twenty.
        advancedChunks: {
          groups: [
            {
              name: 'first',
              test: /api\/begun|jobs\/query\.|shell\/home\.|preload-helper/,
              priority: 3,
            },
            {
              name: 'ground',
              test: /node_modules\/(react|react-dom|scheduler|@tanstack)\//,
              priority: 2,
            },
            { name: 'ground', test: /office\/(api|shell|parts)\//, minShareCount: 6, priority: 1 },
          ],
        },
      },
    },
  },
  logLevel: 'warn',
});
