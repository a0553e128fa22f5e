// Reads the tables that the core writes.

/**
 * The rows of a CSV text (RFC 4180, with a header row) as objects. The apostrophe that keeps a spreadsheet
 * from running a text is taken off.
 *
 * @param {string} text
 * @returns {Record<string, string>[]}
 */
export function rows(text) {
  const [head, ...body] = records(text);
  return body.map((cells) => Object.fromEntries(head.map((name, index) => [name, cells[index]])));
}

function records(text) {
  const found = [];
  let record = [];
  for (const [, quoted, plain, end] of text.matchAll(/(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n|$)/g)) {
    record.push((plain ?? quoted.replaceAll('""', '"')).replace(/^'(?=[=+\-@\t\r])/, ""));
    if (end === ",") continue;
    if (record.length > 1 || record[0] !== "") found.push(record);
    record = [];
  }
  return found;
}
