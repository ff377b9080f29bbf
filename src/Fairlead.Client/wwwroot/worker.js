import { dotnet } from './_framework/dotnet.js';
const t0 = performance.now();
const { getAssemblyExports, getConfig } = await dotnet.create();
const exports = await getAssemblyExports('Fairlead.Client.dll');
postMessage({ ready: performance.now() - t0 });
self.onmessage = async e => {
  const f = e.data;
  for (const n of Object.keys(f)) exports.Fairlead.Client.Engine.Put(n, f[n]);
  postMessage({ result: exports.Fairlead.Client.Engine.Run() });
  f['change.yaml'] = f['change.yaml'].replace('termination: 4 in', 'termination: 5 in');
  exports.Fairlead.Client.Engine.Put('change.yaml', f['change.yaml']);
  postMessage({ result: exports.Fairlead.Client.Engine.Run() });
  f['change.yaml'] = f['change.yaml'].replace('mounting: 0.42 kg', 'mounting: 0.43 kg');
  exports.Fairlead.Client.Engine.Put('change.yaml', f['change.yaml']);
  postMessage({ result: exports.Fairlead.Client.Engine.Run() });
};
