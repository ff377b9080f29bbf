using Fairlead.Client;
using Fairlead.Client.Desk;
using Microsoft.AspNetCore.Components.WebAssembly.Hosting;

var builder = WebAssemblyHostBuilder.CreateDefault(args);
builder.RootComponents.Add<App>("#app");
builder.Services.AddScoped(_ => new HttpClient { BaseAddress = new Uri(builder.HostEnvironment.BaseAddress), DefaultRequestHeaders = { { "X-Fairlead", "1" } } });
builder.Services.AddScoped<Server>().AddScoped<Membership>().AddScoped<Passkeys>().AddScoped<OpenJob>().AddScoped<TabletStore>();
await builder.Build().RunAsync();
