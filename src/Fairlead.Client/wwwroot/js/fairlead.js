// Undo and redo by keyboard, where no field is being typed in.
document.addEventListener('keydown', event => {
    if (!(event.ctrlKey || event.metaKey) || event.target.closest('input, textarea, select')) return;
    const word = event.key === 'z' && !event.shiftKey ? 'Undo' : event.key === 'y' || (event.key === 'z' && event.shiftKey) ? 'Redo' : null;
    const button = word && [...document.querySelectorAll('.tools button')].find(b => b.textContent === word);
    if (button && !button.disabled) { event.preventDefault(); button.click(); }
});
if ('serviceWorker' in navigator) navigator.serviceWorker.register('service-worker.js', { updateViaCache: 'none' });
