// Files that jobs name, kept in this browser by job and name: fonts are too large for where the text
// of a job is kept.

/** Bytes by the name that the job has for them. */
export type Files = ReadonlyMap<string, Uint8Array>;

const kBase = 'swathe';
const kStore = 'files';

function answer<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

/** `lost` is told when it is not to be used any more. */
async function openBase(lost: () => void): Promise<IDBDatabase> {
  const request = indexedDB.open(kBase, 1);
  request.onupgradeneeded = () => void request.result.createObjectStore(kStore);
  const base = await answer(request);
  base.onclose = lost;
  base.onversionchange = () => {
    base.close();
    lost();
  };
  return base;
}

// Keys are [job, name].
const keysOf = (job: string) => IDBKeyRange.bound([job], [job, []]);
const jobIn = (key: IDBValidKey) => String((key as IDBValidKey[])[0]);
const nameIn = (key: IDBValidKey) => String((key as IDBValidKey[])[1]);

async function filesIn(store: IDBObjectStore, job: string): Promise<Map<string, Uint8Array>> {
  const asked = [answer(store.getAllKeys(keysOf(job))), answer<unknown[]>(store.getAll(keysOf(job)))] as const;
  const [keys, values] = await Promise.all(asked);
  const files = new Map<string, Uint8Array>();
  keys.forEach((key, k) => {
    const bytes = values[k];
    if (bytes instanceof Uint8Array) files.set(nameIn(key), bytes);
  });
  return files;
}

/** All of it rejects where the browser refuses it, or has no more room. */
export class KeptFiles {
  private base: Promise<IDBDatabase> | null = null;
  private last: { job: string; files: Files } | null = null; // what is known to be there

  async get(job: string): Promise<Files> {
    this.last = null;
    const files = await this.within('readonly', (store) => filesIn(store, job));
    this.last = { job, files };
    return files;
  }

  /** Puts files, and deletes others of the job that it has `done` with. */
  async put(job: string, files: Files, done: (name: string) => boolean): Promise<void> {
    const known = this.last?.job === job ? this.last.files : null;
    await this.within('readwrite', async (store) => {
      const there = (await answer(store.getAllKeys(keysOf(job)))).map(nameIn);
      for (const name of there) if (done(name)) store.delete([job, name]);
      for (const [name, bytes] of files)
        if (!there.includes(name) || known?.get(name) !== bytes) store.put(bytes, [job, name]);
    });
    this.last = { job, files };
  }

  /** Deletes all that there are of a job: what they were. */
  async delete(job: string): Promise<Files> {
    return this.within('readwrite', async (store) => {
      const files = await filesIn(store, job);
      store.delete(keysOf(job));
      return files;
    });
  }

  /** Deletes those of jobs that are not there any more. */
  async sweep(isThere: (job: string) => boolean): Promise<void> {
    await this.within('readwrite', async (store) => {
      for (const key of await answer(store.getAllKeys()))
        if (!isThere(jobIn(key))) store.delete(key);
    });
  }

  /** One transaction, until what it wrote is there; they come in the order in which they are asked for. */
  private async within<T>(mode: IDBTransactionMode, step: (store: IDBObjectStore) => Promise<T>): Promise<T> {
    const lost = () => (this.base = null);
    this.base ??= openBase(lost);
    const base = await this.base.catch((error) => {
      lost();
      throw error;
    });
    const transaction = base.transaction(kStore, mode);
    const done = new Promise<void>((resolve, reject) => {
      transaction.oncomplete = () => resolve();
      transaction.onabort = () => reject(transaction.error);
    });
    const [result] = await Promise.all([step(transaction.objectStore(kStore)), done]);
    return result;
  }
}
