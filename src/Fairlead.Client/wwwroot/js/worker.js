// The desk in the browser: a runtime of its own, so that the pages never wait for the calculations.
import { dotnet } from '../_framework/dotnet.js';

// How far the work is need not be told more often than it can be read.
const EVERY = 100;
let told = 0;
const tell = (what, done, of, each) => {
    const now = performance.now();
    if (done === 0 || now - told > EVERY) { told = now; postMessage({ progress: { what, done, of, each } }); }
};
const ready = (async () => {
    const runtime = await dotnet.create();
    runtime.setModuleImports('worker', { tell });
    return (await runtime.getAssemblyExports('Fairlead.Client.dll')).Fairlead.Client.Worker.DeskWorker;
})();
onmessage = async ({ data }) => {
    try {
        const desk = await ready;
        postMessage({ id: data.id, answer: data.texts === undefined ? desk.Ask(data.method, data.route, data.body) : desk.Open(data.texts, data.steps) });
    } catch (error) {
        postMessage({ id: data.id, error: String(error) });
    }
};
