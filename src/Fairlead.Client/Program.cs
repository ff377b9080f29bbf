using Fairlead.Client;
using Fairlead.Client.Desk;
using Fairlead.Client.Shell;
using Fairlead.Client.Worker;
using Microsoft.AspNetCore.Components.WebAssembly.Hosting;

// Long enough for the slowest proof; a network that swallows what is sent is told as away after that.
const int Patience = 60;
var builder = WebAssemblyHostBuilder.CreateDefault(args);
builder.RootComponents.Add<App>("#app");
builder.Services.AddScoped(_ => new HttpClient { BaseAddress = new Uri(builder.HostEnvironment.BaseAddress), DefaultRequestHeaders = { { "X-Fairlead", "1" } }, Timeout = TimeSpan.FromSeconds(Patience) });
builder.Services.AddScoped<Server>().AddScoped<Membership>().AddScoped<Passkeys>().AddScoped<OpenJob>().AddScoped<BrowserDesk>().AddScoped<Unkept>().AddScoped<TabletStore>().AddScoped<KeptAnswers>().AddScoped<Link>().AddScoped<Clock>().AddScoped<TakeAlong>().AddScoped<TabletFacts>().AddScoped<Sealer>().AddScoped<Outbox>().AddSingleton(TimeProvider.System);
await builder.Build().RunAsync();
