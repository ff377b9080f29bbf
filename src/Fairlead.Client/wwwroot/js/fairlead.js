// Undo and redo by keyboard, where no field is being typed in.
document.addEventListener('keydown', event => {
    if (!(event.ctrlKey || event.metaKey) || event.target.closest('input, textarea, select')) return;
    const word = event.key === 'z' && !event.shiftKey ? 'Undo' : event.key === 'y' || (event.key === 'z' && event.shiftKey) ? 'Redo' : null;
    const button = word && [...document.querySelectorAll('.tools button')].find(b => b.textContent === word);
    if (button && button.ariaDisabled !== 'true') { event.preventDefault(); button.click(); }
});

// The program keeps itself on the tablet. A newer one is told, and taken when the person says so: never in the middle of an entry.
const hour = 3_600_000;
async function keepProgram() {
    const registration = await navigator.serviceWorker.register('service-worker.js', { updateViaCache: 'none' });
    const note = document.getElementById('newer');
    const look = () => { note.hidden = !(registration.waiting && registration.active); };
    registration.addEventListener('updatefound', () => registration.installing?.addEventListener('statechange', look));
    look();
    note.querySelector('button').addEventListener('click', () => {
        navigator.serviceWorker.addEventListener('controllerchange', () => location.reload());
        registration.waiting?.postMessage('take over');
    });
    setInterval(() => registration.update().catch(() => { }), hour);
    return registration;
}
// Whether the program itself is on this tablet; its first copy, made when the first page is drawn, may still be on the way.
const longest = 300_000;
let keeping = null;
globalThis.fairleadKept = () => Promise.race([copied(), new Promise(r => setTimeout(r, longest, false))]);
async function copied() {
    const registration = await keeping?.catch(() => null);
    if (!registration || registration.active) return !!registration;
    const copy = registration.installing ?? registration.waiting;
    if (!copy) return false;
    return await new Promise(r => copy.addEventListener('statechange', () => { if (['activated', 'redundant'].includes(copy.state)) r(copy.state === 'activated'); }));
}
const drawn = () => {
    if (!document.querySelector('h1')) setTimeout(drawn, 1000);
    else keeping = keepProgram();
    keeping?.catch(error => console.warn('The program is not kept on this tablet: ' + error.message));
};
if ('serviceWorker' in navigator) drawn();
