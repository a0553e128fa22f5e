// The web module in Node, and the fixtures.
import { readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import init, * as core from "../../takeoff-wasm/web/pkg/tilepost.js";

export const root = fileURLToPath(new URL("../..", import.meta.url));
export const web = join(root, "takeoff-wasm/web");

await init({ module_or_path: readFileSync(join(web, "pkg/tilepost_bg.wasm")) });
export { core };

/** Every fixture's job file. */
export const jobs = readdirSync(join(root, "fixtures")).sort().map((name) => join(root, "fixtures", name, "job.json"));
if (jobs.length === 0) throw new Error("there are no fixtures");

/** A job file's text, and the text of the object of files that it names. */
export function read(path) {
  const text = readFileSync(path, "utf8");
  const named = JSON.parse(core.files_named_json(text));
  const files = Object.fromEntries(named.map((name) => [name, readFileSync(join(dirname(path), name), "utf8")]));
  return { text, files: JSON.stringify(files) };
}
