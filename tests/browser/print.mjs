// Prints what an entry of the web module gives for a job file: `node print.mjs takeoff_json JOB`; or for several:
// `node print.mjs order_json JOB…`.
import { core, read } from "./core.mjs";

const [entry, ...paths] = process.argv.slice(2);
const jobs = paths.map(read);
const printed = {
  schema_json: () => core.schema_json(),
  order_json: () => core.order_json(JSON.stringify(jobs.map(({ text, files }) => [text, JSON.parse(files)]))),
};
process.stdout.write(entry in printed ? printed[entry]() : core[entry](jobs[0].text, jobs[0].files));
