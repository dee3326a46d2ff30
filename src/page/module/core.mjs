// One instance of the core: WebAssembly, the few things it asks of the outside, and its C functions
// as they are called from here. What goes wrong in it so that it cannot be used any more is Ended.

const kPage = 65536;

/** Why an instance came to its end, in words. */
export class Ended extends Error {}

/** What a call came to; as door.cpp has it. */
export const Came = { Done: 0, Refused: 1, Failed: 2, NoMemory: 3 };

const kNoMemory = 'there was not enough memory for it';

/** A number of C for "it cannot be had" (musl's errno.h by way of WASI: ENOSYS). */
const kNotHere = 52;

/** What the core asks of the outside. It has no clock, no files and no environment. */
function outside(memory, instance) {
  const bytes = () => new Uint8Array(memory.buffer);
  const numbers = () => new DataView(memory.buffer);
  const textAt = (start) => {
    const all = bytes();
    return new TextDecoder().decode(all.slice(start, all.indexOf(0, start)));
  };
  const jump = Symbol('longjmp');
  return {
    memory,
    __assert_fail: (condition, file, line) => {
      throw new Ended(`${textAt(file)}:${line} found a mistake of ours: ${textAt(condition)}`);
    },
    abort: () => {
      throw new Ended('it gave up');
    },
    proc_exit: () => {
      throw new Ended('it gave up');
    },
    emscripten_memcpy_big: (to, from, size) => {
      bytes().copyWithin(to, from, from + size);
    },
    emscripten_resize_heap: (wanted) => {
      const now = memory.buffer.byteLength;
      // A fifth more than now saves steps.
      for (const size of [Math.max(wanted >>> 0, now * 1.2), wanted >>> 0]) {
        try {
          memory.grow(Math.ceil((size - now) / kPage));
          return 1;
        } catch {
          // past the most there may be
        }
      }
      return 0;
    },
    // Cairo asks what time it is, and then is told the date that goes into the file.
    time: () => 0,
    clock_time_get: (clock, precision, at) => {
      numbers().setBigUint64(at, 0n, true);
      return 0;
    },
    // What libraries print goes nowhere.
    fd_write: (file, parts, count, written) => {
      let size = 0;
      for (let k = 0; k < count; ++k) size += numbers().getUint32(parts + 8 * k + 4, true);
      numbers().setUint32(written, size, true);
      return 0;
    },
    environ_sizes_get: (count, size) => {
      numbers().setUint32(count, 0, true);
      numbers().setUint32(size, 0, true);
      return 0;
    },
    environ_get: () => 0,
    // FreeType's way out of a damaged table.
    _emscripten_throw_longjmp: () => {
      throw jump;
    },
    invoke: (index, ...values) => {
      const c = instance();
      const stack = c.stackSave();
      try {
        return c.__indirect_function_table.get(index)(...values);
      } catch (error) {
        if (error !== jump) throw error;
        c.stackRestore(stack);
        c.setThrew(1, 0);
        return 0;
      }
    },
  };
}

/** Why WebAssembly or JavaScript stopped, in words. */
function wordsOf(error) {
  if (error instanceof Ended) return error.message;
  if (error instanceof RangeError) return 'it went too deep';
  return `it broke off (${error.message ?? error})`;
}

export class Core {
  #c;
  #memory;
  #session;

  /**
   * @param {WebAssembly.Module} module
   * @param {number} mostMemory bytes, at most 2 GiB
   * @param {(exports, memory) => exports} between may put something of its own before them
   */
  static async start(module, mostMemory, between = (exports) => exports) {
    const memory = new WebAssembly.Memory({ initial: 256, maximum: Math.floor(mostMemory / kPage) });
    let instance;
    const asked = outside(memory, () => instance.exports);
    const imports = {};
    for (const { module: from, name } of WebAssembly.Module.imports(module)) {
      const found = name.startsWith('invoke_') ? asked.invoke : asked[name];
      (imports[from] ??= {})[name] = found ?? (() => kNotHere);
    }
    instance = await WebAssembly.instantiate(module, imports);
    return new Core(between(instance.exports, memory), memory);
  }

  constructor(c, memory) {
    this.#c = c;
    this.#memory = memory;
    this.#run(() => {
      c._initialize?.();
      c.__wasm_call_ctors?.();
      this.#session = c.swathe_begin();
    });
    if (this.#session === 0) throw new Ended(kNoMemory);
  }

  /** Bytes of memory that the instance has taken so far. */
  get memory() {
    return this.#memory.buffer.byteLength;
  }

  /** A file that jobs name. */
  give(name, bytes) {
    return this.#call('swathe_give', [text(name), bytes]);
  }

  /** Works a job out. */
  open(job, request) {
    return this.#call('swathe_open', [job, text(JSON.stringify(request))]);
  }

  ask(request) {
    return this.#call('swathe_ask', [text(JSON.stringify(request))]);
  }

  /** {came, said, bytes}: what door.cpp gives; throws Ended. */
  #call(name, given) {
    return this.#run(() => {
      const c = this.#c;
      const places = given.map((bytes) => this.#put(bytes));
      const values = places.flatMap((place, k) => [place, given[k].length]);
      const came = c[name](this.#session, ...values);
      if (came === Came.NoMemory) throw new Ended(kNoMemory);
      for (const place of places) c.free(place);
      const said = this.#taken(c.swathe_said(), c.swathe_said_size());
      return {
        came,
        said: said.length === 0 ? null : JSON.parse(new TextDecoder().decode(said)),
        bytes: this.#taken(c.swathe_bytes(), c.swathe_bytes_size()),
      };
    });
  }

  #put(bytes) {
    const place = this.#c.malloc(Math.max(bytes.length, 1)) >>> 0;
    if (place === 0) throw new Ended(kNoMemory);
    new Uint8Array(this.#memory.buffer).set(bytes, place);
    return place;
  }

  #taken(place, size) {
    return new Uint8Array(this.#memory.buffer).slice(place >>> 0, (place >>> 0) + size);
  }

  #run(step) {
    try {
      return step();
    } catch (error) {
      throw new Ended(wordsOf(error));
    }
  }
}

function text(words) {
  return new TextEncoder().encode(words);
}
