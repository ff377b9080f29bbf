// What this tablet keeps: named stores of the browser's own database (IndexedDB). A value is anything that can be cloned; a key is a text.
const stores = ['kept', 'texts', 'outbox', 'photographs', 'facts', 'edits'];
const version = 2;
let opened = null;

function database() {
    return opened ??= new Promise((done, failed) => {
        const request = indexedDB.open('fairlead', version);
        request.onupgradeneeded = () => stores.filter(s => !request.result.objectStoreNames.contains(s)).forEach(s => request.result.createObjectStore(s));
        request.onblocked = () => failed(new Error('Another page of an older Fairlead is open: close it.'));
        request.onerror = () => failed(plain(request.error));
        request.onsuccess = () => {
            // A newer page may make new stores, and the browser may take the database away: the next use opens it anew.
            request.result.onversionchange = () => { request.result.close(); opened = null; };
            request.result.onclose = () => { opened = null; };
            done(request.result);
        };
    }).catch(error => { opened = null; throw error; });
}

// The word 'full' first is what the program looks for.
const plain = error => new Error(error?.name === 'QuotaExceededError' ? 'full: the storage of this tablet is full' : `${error?.name ?? 'Error'}: ${error?.message ?? 'the storage of this tablet failed'}`);

// Runs some work in one transaction: it is there wholly when the promise resolves, or not at all.
async function within(names, mode, options, work) {
    const db = await database();
    return await new Promise((done, failed) => {
        let result;
        const transaction = db.transaction(names, mode, options);
        transaction.oncomplete = () => done(result?.result);
        transaction.onabort = () => failed(plain(transaction.error));
        try {
            result = work(name => transaction.objectStore(name));
        } catch (error) {
            transaction.abort();
            failed(plain(error));
        }
    });
}

export const get = async (store, key) => await within([store], 'readonly', {}, of => of(store).get(key)) ?? null;
export const keys = store => within([store], 'readonly', {}, of => of(store).getAllKeys());
export const all = store => within([store], 'readonly', {}, of => of(store).getAll());
export const put = (store, key, value) => within([store], 'readwrite', { durability: 'relaxed' }, of => { of(store).put(value, key); });
export const remove = (store, key) => within([store], 'readwrite', { durability: 'strict' }, of => { of(store).delete(key); });

// Several puts and deletes at once, on the disk when the promise resolves. A change is { store, key, value }; without a value it deletes.
export const change = changes => changes.length === 0 ? undefined : within([...new Set(changes.map(c => c.store))], 'readwrite', { durability: 'strict' }, of => {
    for (const { store, key, value } of changes) {
        if (value === undefined || value === null) of(store).delete(key); else of(store).put(value, key);
    }
});

// A new id (UUID version 4).
export const id = () => crypto.randomUUID();

// Asks the browser not to clear this storage by itself. False where it may.
export const persist = async () => await navigator.storage?.persist?.() ?? false;
