// Speaks with the worker in which the desk runs when the server is not asked.
let worker = null, last = 0;
const waiting = new Map();
let told = () => { };

const fail = why => { for (const { reject } of waiting.values()) reject(new Error(why)); waiting.clear(); };

const send = message => new Promise((resolve, reject) => {
    warm();
    waiting.set(++last, { resolve, reject });
    worker.postMessage({ id: last, ...message });
});

export const watch = listener => { told = listener; };

// Starts the runtime, which takes a while, before anything is asked of it.
export const warm = () => {
    if (worker) return;
    worker = new Worker(new URL('./worker.js', import.meta.url), { type: 'module' });
    worker.onerror = event => { event.preventDefault(); end(event.message || 'The calculations could not be started here.'); };
    worker.onmessage = ({ data }) => {
        if (data.progress) { told(data.progress.what, data.progress.done, data.progress.of); return; }
        const asked = waiting.get(data.id);
        waiting.delete(data.id);
        if (data.error) asked?.reject(new Error(data.error)); else asked?.resolve(data.answer);
    };
};

export const open = (texts, steps) => send({ texts, steps });
export const ask = (method, route, body) => send({ method, route, body });

// Ends whatever is being worked out; the next that is asked starts anew.
export const end = why => { worker?.terminate(); worker = null; fail(why); };
