// Undo and redo by keyboard, where no field is being typed in.
document.addEventListener('keydown', event => {
    if (!(event.ctrlKey || event.metaKey) || event.target.closest('input, textarea, select')) return;
    const word = event.key === 'z' && !event.shiftKey ? 'Undo' : event.key === 'y' || (event.key === 'z' && event.shiftKey) ? 'Redo' : null;
    const button = word && [...document.querySelectorAll('.tools button')].find(b => b.textContent === word);
    if (button && !button.disabled) { event.preventDefault(); button.click(); }
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
}
// Whether the program itself is on this tablet; its first copy may still be on the way.
const copying = 60_000;
globalThis.fairleadKept = () => 'serviceWorker' in navigator
    ? Promise.race([navigator.serviceWorker.ready.then(() => true), new Promise(r => setTimeout(r, copying, false))]) : Promise.resolve(false);
// The first copy is made when the first page is drawn: until then the network is needed for that.
const drawn = () => document.querySelector('h1')
    ? keepProgram().catch(error => console.warn('The program is not kept on this tablet: ' + error.message)) : setTimeout(drawn, 1000);
if ('serviceWorker' in navigator) drawn();
