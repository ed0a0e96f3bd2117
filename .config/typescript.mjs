// Runs TypeScript as it stands, for benchmarks and one-off scripts:
// node --conditions=gauge-source --import ./.config/typescript.mjs FILE.ts

import { register } from 'node:module';

register('./typescript-hooks.mjs', import.meta.url);
