#!/usr/bin/env node
import { loadCommand } from './start.ts';

const { run } = loadCommand();
await run(process.argv.slice(2));
