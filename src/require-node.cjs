'use strict';
// Plain CommonJS that any Node since version 6 can run: says one clear line where this Node is too old.
const needed = [22, 18];

/** Whether the running Node can run soilclock. */
function supported() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  return major > needed[0] || (major === needed[0] && minor >= needed[1]);
}

/** Ends the process with exit code 2 and one line on stderr where the running Node is too old. */
function requireNode() {
  if (supported()) return;
  const running = `Node ${process.versions.node} (${process.execPath})`;
  process.stderr.write(`soilclock needs Node ${needed.join('.')} or newer; this is ${running}.\n`);
  process.exit(2);
}

requireNode();
