// Run before a program: whatever reaches for the network or starts another program is told so, and written to standard error.
import childProcess from 'node:child_process';
import dns from 'node:dns';
import http from 'node:http';
import https from 'node:https';
import { syncBuiltinESMExports } from 'node:module';
import net from 'node:net';

const refuse = (what) => () => {
  process.stderr.write(`reached for ${what}\n`);
  throw new Error(`reached for ${what}`);
};
for (const name of ['connect', 'createConnection', 'createServer']) net[name] = refuse(`net.${name}`);
net.Socket.prototype.connect = refuse('a socket');
for (const name of ['request', 'get']) {
  http[name] = refuse(`http.${name}`);
  https[name] = refuse(`https.${name}`);
}
for (const name of ['lookup', 'resolve']) dns[name] = refuse(`dns.${name}`);
for (const name of ['spawn', 'exec', 'execFile', 'fork', 'spawnSync', 'execSync', 'execFileSync'])
  childProcess[name] = refuse(`child_process.${name}`);
globalThis.fetch = refuse('fetch');
syncBuiltinESMExports();
