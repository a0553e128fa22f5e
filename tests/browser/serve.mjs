// Serves the web folder as a careful host would: with a policy that forbids what the page need not do.
import { createReadStream, existsSync } from "node:fs";
import { createServer } from "node:http";
import { extname, join, normalize } from "node:path";
import { web } from "./core.mjs";

const POLICY = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; worker-src 'self'; style-src 'self'; connect-src 'self'; img-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";
const TYPES = {
  ".css": "text/css", ".html": "text/html", ".js": "text/javascript", ".json": "application/json",
  ".svg": "image/svg+xml", ".wasm": "application/wasm",
};

/** @returns {Promise<{ address: string, close: () => void }>} */
export async function serve() {
  const server = createServer((request, response) => {
    const path = normalize(new URL(request.url, "http://host").pathname);
    const file = join(web, path.endsWith("/") ? `${path}index.html` : path);
    if (!file.startsWith(web) || !existsSync(file)) return response.writeHead(404).end();
    response.writeHead(200, { "Content-Type": TYPES[extname(file)] ?? "text/plain", "Content-Security-Policy": POLICY });
    createReadStream(file).pipe(response);
  });
  await new Promise((listening) => server.listen(0, "127.0.0.1", listening));
  return { address: `http://127.0.0.1:${server.address().port}/`, close: () => server.close() };
}
