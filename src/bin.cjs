#!/usr/bin/env node
'use strict';
require('./require-node.cjs');
require('node:module').enableCompileCache?.();

// An installed package runs what was built; a checkout runs its sources, so that a change is seen at once.
const path = require('node:path');
const { pathToFileURL } = require('node:url');
const installed = __dirname.split(path.sep).includes('node_modules');
const main = installed ? path.join(__dirname, '..', 'out', 'lib', 'cli.js') : path.join(__dirname, 'cli.ts');

import(pathToFileURL(main).href).then((cli) => cli.run());
