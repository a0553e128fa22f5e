// Asks the core in its worker.

/**
 * The core's text entries (`takeoff_json`, `check_json` …), answered in order.
 *
 * A module that ran out of memory can't be used again: its worker is let go and the next question gets a
 * new one.
 */
export class Engine {
  #worker;
  #asked = new Map();
  #last = 0;

  /** @returns {Promise<string>} what the entry gives for these texts */
  ask(entry, ...texts) {
    this.#worker ??= this.#start();
    const id = ++this.#last;
    return new Promise((answer, fail) => {
      this.#asked.set(id, { answer, fail });
      this.#worker.postMessage({ id, entry, texts });
    });
  }

  /** Lets the worker go; whoever still waits is told. */
  stop(reason = "stopped") {
    this.#worker?.terminate();
    this.#worker = undefined;
    for (const { fail } of this.#asked.values()) fail(new Error(reason));
    this.#asked.clear();
  }

  #start() {
    const worker = new Worker(new URL("./worker.js", import.meta.url), { type: "module" });
    worker.addEventListener("error", (event) => this.stop(event.message || "the module could not be loaded"));
    worker.addEventListener("message", ({ data: { id, text, failure, lost } }) => {
      const asked = this.#asked.get(id);
      this.#asked.delete(id);
      if (failure === undefined) asked?.answer(text);
      else asked?.fail(new Error(failure));
      if (lost) this.stop(failure);
    });
    return worker;
  }
}
