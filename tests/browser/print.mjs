// Prints what an entry of the web module gives for a job file: `node print.mjs takeoff_json JOB`.
import { core, read } from "./core.mjs";

const [entry, path] = process.argv.slice(2);
const { text, files } = read(path);
process.stdout.write(entry === "schema_json" ? core.schema_json() : core[entry](text, files));
