// Which pages of this tablet live. A page holds a lock of its own name until it is gone, however it goes.
const prefix = 'fairlead-page-';
let mine = null;

export const hold = () => mine ??= new Promise((done, failed) => {
    const name = crypto.randomUUID();
    navigator.locks.request(prefix + name, () => { done(name); return new Promise(() => { }); }).catch(failed);
});

// One page of the tablet at a time is at something; null where another is and this one does not wait. The turn ends with the page, however it goes.
export const turn = (name, wait) => navigator.locks ? new Promise((got, failed) => navigator.locks.request('fairlead-turn-' + name, { ifAvailable: !wait },
    lock => lock ? new Promise(end => got({ end })) : got(null)).catch(failed)) : { end() { } };

export const living = async () => (await navigator.locks.query()).held.filter(l => l.name.startsWith(prefix)).map(l => l.name.slice(prefix.length));
