// Drives a session through the JavaScript client that Jupyter's own front ends use, over a real Jupyter server.
// Usage: node services_client.mjs SERVER_URL
import services from '@jupyterlab/services';
import ws from 'ws';
import { equal, ok } from 'node:assert/strict';

const { KernelManager, ServerConnection } = services;
const settings = ServerConnection.makeSettings({
  baseUrl: process.argv[2], wsUrl: process.argv[2].replace('http', 'ws'), WebSocket: ws,
});
const manager = new KernelManager({ serverSettings: settings });
const kernel = await manager.startNew({ name: 'spanwright' });

const info = await kernel.info;
equal(info.language_info.name, 'java');

const run = async (code, onInput) => {
  const future = kernel.requestExecute({ code, allow_stdin: Boolean(onInput) });
  const outputs = [];
  future.onIOPub = (message) => outputs.push(message);
  future.onStdin = (message) => {
    equal(message.header.msg_type, 'input_request');
    kernel.sendInputReply({ status: 'ok', value: onInput }, message.header);
  };
  const reply = await future.done;
  return { reply, outputs, of: (type) => outputs.filter((o) => o.header.msg_type === type) };
};

const sum = await run('var level = 3.5;\nlevel * 2');
equal(sum.reply.content.status, 'ok');
equal(sum.of('execute_result')[0].content.data['text/plain'], '7.0');

const bad = await run('int n = "text";');
equal(bad.reply.content.status, 'error');
ok(bad.of('error')[0].content.traceback.length > 0);

const asked = await run('var answer = input("How many? ");\nanswer', '12');
equal(asked.of('execute_result')[0].content.data['text/plain'], '12');

const completion = await kernel.requestComplete({ code: 'level.', cursor_pos: 4 });
ok(completion.content.matches.includes('level'));

const endless = run('while (true) { }');
await new Promise((resolve) => setTimeout(resolve, 500));
const before = Date.now();
await kernel.interrupt();
equal((await endless).reply.content.status, 'error');
ok(Date.now() - before < 2000, 'the interrupt took too long');
equal((await run('level')).of('execute_result')[0].content.data['text/plain'], '3.5');

await kernel.restart();
equal((await run('level')).reply.content.status, 'error');
equal((await run('1 + 1')).of('execute_result')[0].content.data['text/plain'], '2');

await kernel.shutdown();
console.log('1 session driven');
process.exit(0);
