// Which pages of this tablet live. A page holds a lock of its own name until it is gone, however it goes.
const prefix = 'fairlead-page-';
let mine = null;

export const hold = () => mine ??= new Promise((done, failed) => {
    const name = crypto.randomUUID();
    navigator.locks.request(prefix + name, () => { done(name); return new Promise(() => { }); }).catch(failed);
});

export const living = async () => (await navigator.locks.query()).held.filter(l => l.name.startsWith(prefix)).map(l => l.name.slice(prefix.length));
