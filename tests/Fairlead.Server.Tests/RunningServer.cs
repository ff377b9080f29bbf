using System.Net;
using System.Net.Sockets;
using Fairlead.Model;
using Fairlead.Model.Storage;
using Fairlead.Records;
using Fairlead.Server;
using Fairlead.Server.People;

namespace Fairlead.Tests.Server;

/// <summary>A server on a free port with a data folder of its own, and people who ask it things.</summary>
public sealed class RunningServer : IAsyncDisposable
{
    public const string Password = "brown ladder by the river";
    private readonly WebApplication app;
    private readonly bool ownsData;

    private RunningServer(WebApplication app, string data, bool ownsData) => (this.app, Data, this.ownsData) = (app, data, ownsData);

    public string Data { get; }

    public IServiceProvider Services => app.Services;

    public string FirstKey => app.Services.GetRequiredService<FirstKey>().Words;

    public IEnumerable<RouteEndpoint> Endpoints => app.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>();

    public static async Task<RunningServer> Start(bool lan = true, string? data = null, ILoggerProvider? logs = null, string certificate = "", string certificatePassword = "", TimeProvider? clock = null, IJobFiles? files = null)
    {
        var folder = data ?? Directory.CreateTempSubdirectory("fairlead-server").FullName;
        var job = Path.Combine(folder, "jobs", "demo");
        if (!Directory.Exists(job))
        {
            files ??= Starter.Files();
            SafeWrite.Folder(job, files.All.Select(f => KeyValuePair.Create(f, files.Read(f))));
        }

        var started = FairleadServer.Create(new ServerOptions(folder, 0, lan) { Certificate = certificate, CertificatePassword = certificatePassword }, clock ?? TimeProvider.System, builder =>
        {
            if (logs is not null)
            {
                builder.Logging.AddProvider(logs).SetMinimumLevel(LogLevel.Trace);
            }
        });
        await started.StartAsync();
        return new RunningServer(started, folder, data is null);
    }

    /// <summary>The folder of the job.</summary>
    public string Job => Path.Combine(Data, "jobs", "demo");

    /// <summary>Enters something in the log of the job, in the name of its first person.</summary>
    public void Enter(string kind, string subject, string text = "")
    {
        var job = JobFolder.Load(Job).Job!;
        using var store = SqliteLogStore.Open(Path.Combine(Job, FolderFiles.Log));
        Assert.NotNull(new LogBook(store, Register.Of(job), TimeProvider.System).Append(new Draft(job.Order.People![0].Id, kind, subject, Payload.Empty.With("text", text))).Entry);
    }

    /// <summary>A browser that nobody has signed in at.</summary>
    /// <param name="cookies">Its cookies; its own unless given.</param>
    /// <param name="from">The address it asks from, one of this machine; whichever the system chooses unless given.</param>
    public HttpClient Anybody(CookieContainer? cookies = null, IPAddress? from = null)
    {
        var handler = new SocketsHttpHandler { CookieContainer = cookies ?? new CookieContainer(), AllowAutoRedirect = false };
        if (from is not null)
        {
            handler.ConnectCallback = async (context, stop) =>
            {
                var socket = new Socket(AddressFamily.InterNetwork, SocketType.Stream, ProtocolType.Tcp) { NoDelay = true };
                socket.Bind(new IPEndPoint(from, 0));
                await socket.ConnectAsync(IPAddress.Loopback, context.DnsEndPoint.Port, stop);
                return new NetworkStream(socket, ownsSocket: true);
            };
        }

        handler.SslOptions.RemoteCertificateValidationCallback = (_, shown, _, _) => shown is not null && shown.GetCertHashString() == Own();
        var uri = new Uri(app.Urls.First());
        var origin = $"{uri.Scheme}://localhost:{uri.Port}";
        return new HttpClient(handler) { BaseAddress = new Uri(origin), DefaultRequestHeaders = { { "X-Fairlead", "1" }, { "Origin", origin } } };
    }

    private string Own()
    {
        using var kept = System.Security.Cryptography.X509Certificates.X509CertificateLoader.LoadPkcs12FromFile(Path.Combine(Data, "certificate.pfx"), password: null);
        return kept.GetCertHashString();
    }

    /// <summary>The first keeper, signed in.</summary>
    public async Task<HttpClient> Keeper(string person = "")
    {
        var keeper = Anybody();
        if (FirstKey.Length > 0)
        {
            (await keeper.PostAsJsonAsync("/api/first-keeper", new FirstAsk(FirstKey, "keeper.one", person, Password))).EnsureSuccessStatusCode();
        }

        (await SignIn(keeper, "keeper.one", Password)).EnsureSuccessStatusCode();
        return keeper;
    }

    /// <summary>Somebody a keeper added, signed in.</summary>
    public async Task<HttpClient> Member(HttpClient keeper, string name, string person, params string[] roles)
    {
        var added = await keeper.PostAsJsonAsync("/api/people", new MemberAsk(name, person, roles));
        var code = (await added.EnsureSuccessStatusCode().Content.ReadFromJsonAsync<HandedCode>())!.Code;
        var member = Anybody();
        (await SignIn(member, name, code, Password)).EnsureSuccessStatusCode();
        return member;
    }

    public static Task<HttpResponseMessage> SignIn(HttpClient client, string name, string password, string next = "") =>
        client.PostAsJsonAsync("/api/sign-in", new SignInAsk(name, password, next));

    public async ValueTask DisposeAsync()
    {
        await app.StopAsync();
        await app.DisposeAsync();
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        if (ownsData)
        {
            Directory.Delete(Data, recursive: true);
        }
    }
}
