// One instance of the core: WebAssembly, the few things it asks of the outside, and its C functions
// as they are called from here. What goes wrong in it so that it cannot be used any more is Ended.

const kPage = 65536;

/** Why an instance came to its end, in words. */
export class Ended extends Error {}

/** What a call came to; as door.cpp has it. */
export const Came = { Done: 0, Refused: 1, Failed: 2, NoMemory: 3 };

const kNoMemory = 'there was not enough memory for it';

/** What WASI says of anything that is not there: ENOSYS. */
const kNotHere = 52;

/**
 * What the core asks of the outside: WASI's few functions, and what setjmp wants. It has no clock,
 * no files and no environment.
 */
class Outside {
  /** The end of what libraries printed: a failed assert says there what it was. */
  printed = '';
  #high = 0; // the upper half of a result of 64 bits

  constructor(memory, exportsOf) {
    const bytes = () => new Uint8Array(memory.buffer);
    const numbers = () => new DataView(memory.buffer);
    const jump = Symbol('longjmp');
    const invoke = (index, ...values) => {
      const c = exportsOf();
      const stack = c.stackSave();
      try {
        return c.__indirect_function_table.get(index)(...values);
      } catch (error) {
        if (error !== jump) throw error;
        c.stackRestore(stack);
        c.setThrew(1, 0);
        return 0;
      }
    };
    this.functions = {
      memory,
      emscripten_notify_memory_growth: () => {},
      proc_exit: () => {
        throw new Ended('it gave up');
      },
      // Cairo asks what time it is, and is told later which date goes into the file.
      clock_time_get: (clock, precision, at) => {
        numbers().setBigUint64(at, 0n, true);
        return 0;
      },
      fd_write: (file, parts, count, written) => {
        let size = 0;
        for (let k = 0; k < count; ++k) {
          const place = numbers().getUint32(parts + 8 * k, true);
          const length = numbers().getUint32(parts + 8 * k + 4, true);
          this.printed += new TextDecoder().decode(bytes().slice(place, place + length));
          size += length;
        }
        this.printed = this.printed.slice(-1000);
        numbers().setUint32(written, size, true);
        return 0;
      },
      environ_sizes_get: (count, size) => {
        numbers().setUint32(count, 0, true);
        numbers().setUint32(size, 0, true);
        return 0;
      },
      environ_get: () => 0,
      setTempRet0: (high) => {
        this.#high = high;
      },
      getTempRet0: () => this.#high,
      // FreeType's way out of a damaged table.
      _emscripten_throw_longjmp: () => {
        throw jump;
      },
      invoke,
    };
  }

  /** As WebAssembly.instantiate wants them. */
  importsOf(module) {
    const imports = {};
    for (const { module: from, name } of WebAssembly.Module.imports(module))
      (imports[from] ??= {})[name] =
        this.functions[name.startsWith('invoke_') ? 'invoke' : name] ?? (() => kNotHere);
    return imports;
  }
}

/** Why WebAssembly or JavaScript stopped, in words. */
function wordsOf(error, printed) {
  if (error instanceof Ended && error.message === kNoMemory) return error.message;
  const failed = /Assertion failed: (.*)/.exec(printed);
  if (failed) return `it found a mistake of its own: ${failed[1]}`;
  if (error instanceof Ended) return error.message;
  if (error instanceof RangeError) return 'it went too deep';
  return `it broke off (${error.message ?? error})`;
}

export class Core {
  #c;
  #memory;
  #outside;
  #session;

  /**
   * @param {WebAssembly.Module} module
   * @param {number} mostMemory bytes, at most 2 GiB
   * @param {(exports, memory) => exports} between may put something of its own before them
   */
  static async start(module, mostMemory, between = (exports) => exports) {
    const memory = new WebAssembly.Memory({ initial: 256, maximum: Math.floor(mostMemory / kPage) });
    let instance;
    const outside = new Outside(memory, () => instance.exports);
    instance = await WebAssembly.instantiate(module, outside.importsOf(module));
    return new Core(between(instance.exports, memory), memory, outside);
  }

  constructor(c, memory, outside) {
    this.#c = c;
    this.#memory = memory;
    this.#outside = outside;
    this.#run(() => {
      c._initialize();
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
      throw new Ended(wordsOf(error, this.#outside.printed));
    }
  }
}

function text(words) {
  return new TextEncoder().encode(words);
}
