// Gets a job and the files that it names.

const MOST_BYTES = 64 << 20;

/**
 * The job among files that somebody opened, with the others by their names.
 *
 * @param {Iterable<File>} opened
 * @returns {Promise<{ name: string, text: string, given: Map<string, string> }>}
 */
export async function readOpened(opened) {
  const texts = new Map();
  for (const file of opened) texts.set(file.name, utf8(file.name, await bytes(file)));
  const name = [...texts.keys()].find((name) => name.toLowerCase().endsWith(".json"));
  if (!name) throw new Error("none of these files is a job: a job file's name ends in .json");
  return { name, text: texts.get(name), given: texts };
}

/**
 * The job at an address, with the files beside it that it names.
 *
 * @param {URL} address
 * @param {(job: string) => Promise<string[]>} filesNamed
 */
export async function readFetched(address, filesNamed) {
  const name = address.pathname.split("/").pop();
  const text = await fetched(name, address);
  const given = new Map();
  for (const file of await filesNamed(text)) given.set(file, await fetched(file, new URL(file, address)));
  return { name, text, given };
}

async function fetched(name, address) {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`\`${name}\` could not be fetched: ${response.status}`);
  return utf8(name, await response.arrayBuffer());
}

async function bytes(file) {
  if (file.size > MOST_BYTES) throw new Error(`\`${file.name}\` is too large: a job file has at most ${MOST_BYTES >> 20} MB`);
  return file.arrayBuffer();
}

function utf8(name, bytes) {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    throw new Error(`\`${name}\` is not UTF-8 text: save it as UTF-8`);
  }
}
