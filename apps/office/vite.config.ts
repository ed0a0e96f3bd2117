// How the pages are built: from this folder into .build/office, which the service hands out.

import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

export default defineConfig({
  root: import.meta.dirname,
  plugins: [react()],
  resolve: { conditions: ['gauge-source', 'module', 'browser', 'development|production'] },
  build: {
    outDir: '../../.build/office',
    emptyOutDir: true,
    target: 'es2022',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
  logLevel: 'warn',
});
