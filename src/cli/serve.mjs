// `npm start`: installs what is missing, serves the app on this machine and prints its address.
// npm start -- --port 8080   another port (5173 is the usual one; the next free one if taken)
// npm start -- --host 0.0.0.0   reachable from other machines (127.0.0.1 is the usual one)
import { prepareOrExit, ROOT, say } from "./prepare.mjs";

/** @param {string} name @param {string} usual @returns {string} */
function option(name, usual) {
  const at = process.argv.indexOf(name);
  if (at < 0) return usual;
  const given = process.argv[at + 1];
  if (given) return given;
  say(`${name} needs a value, such as ${name} ${usual}`);
  process.exit(1);
}

const port = Number(option("--port", "5173"));
const host = option("--host", "127.0.0.1");
if (!Number.isInteger(port) || port < 0 || port > 65535) {
  say("--port must be a whole number from 0 to 65535.");
  process.exit(1);
}

prepareOrExit();

const { createServer } = await import("vite");
try {
  const server = await createServer({ root: ROOT, server: { port, host } });
  await server.listen();
  const address = server.httpServer ? server.httpServer.address() : null;
  if (address === null || typeof address === "string") throw new Error("no address");
  console.log(`Bankyard is at http://${host}:${String(address.port)}/  (Ctrl+C stops it)`);
} catch (error) {
  const why = error instanceof Error ? error.message : String(error);
  say(`Bankyard could not be served on ${host}, port ${String(port)}: ${why}`);
  process.exit(1);
}
