#!/usr/bin/env node
'use strict';
// Only syntax that Node 10 can read, so that the guard comes to speak: no `?.`, no trailing commas in calls.
require('./require-node.cjs');

// Node 22.18 has it; a Node without it would only start a little slower.
const { enableCompileCache } = require('node:module');
if (enableCompileCache) enableCompileCache();

// An installed package runs what was built; a checkout runs its sources, so that a change is seen at once.
const path = require('node:path');
const { pathToFileURL } = require('node:url');
const installed = __dirname.split(path.sep).includes('node_modules');
const main = installed ? path.join(__dirname, '..', 'out', 'lib', 'cli.js') : path.join(__dirname, 'cli.ts');

import(pathToFileURL(main).href).then((cli) => cli.run());
