using System.Net;
using System.Text.Json;
using Fairlead.Server.People;

namespace Fairlead.Tests.Server;

public sealed class PasskeyTests
{
    [Fact]
    public async Task A_passkey_signs_its_owner_in_and_opens_nothing_once_it_was_removed()
    {
        await using var server = await RunningServer.Start();
        using var keeper = await server.Keeper();
        using var passkey = Authenticator(keeper);
        Assert.Equal(HttpStatusCode.NoContent, (await Add(keeper, passkey)).StatusCode);
        var line = Assert.Single((await keeper.GetFromJsonAsync<PasskeyLine[]>("/api/passkeys"))!);
        Assert.Equal("tablet one", line.Name);

        using var tablet = server.Anybody();
        Assert.Equal(HttpStatusCode.NoContent, (await SignIn(tablet, passkey)).StatusCode);
        Assert.Equal("keeper.one", (await tablet.GetFromJsonAsync<WhoAmI>("/api/me"))!.Name);

        Assert.Equal(HttpStatusCode.NoContent, (await keeper.DeleteAsync("/api/passkeys/" + line.Id)).StatusCode);
        using var later = server.Anybody();
        Assert.Equal(HttpStatusCode.Unauthorized, (await SignIn(later, passkey)).StatusCode);
        Assert.Equal(["unknown passkey", "passkey removed", "signed in by passkey", "passkey added"], (await keeper.GetFromJsonAsync<SignInLine[]>("/api/sign-ins"))!.Take(4).Select(s => s.Outcome));
    }

    [Fact]
    public async Task An_answer_serves_once_and_for_the_offer_it_was_made_for()
    {
        await using var server = await RunningServer.Start();
        using var keeper = await server.Keeper();
        using var passkey = Authenticator(keeper);
        (await Add(keeper, passkey)).EnsureSuccessStatusCode();

        using var tablet = server.Anybody();
        var answer = passkey.Show(await Offer(tablet, "/api/sign-in/passkey/offer"));
        await Offer(tablet, "/api/sign-in/passkey/offer");
        Assert.Equal(HttpStatusCode.Unauthorized, (await tablet.PostAsJsonAsync("/api/sign-in/passkey", new PasskeyAsk(answer))).StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, (await server.Anybody().PostAsJsonAsync("/api/sign-in/passkey", new PasskeyAsk(answer))).StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, (await tablet.PostAsJsonAsync("/api/sign-in/passkey", new PasskeyAsk("{}"))).StatusCode);
    }

    [Fact]
    public async Task A_passkey_of_another_origin_or_that_verified_nobody_is_refused()
    {
        await using var server = await RunningServer.Start();
        using var keeper = await server.Keeper();
        using var elsewhere = new SoftAuthenticator("https://hangar.example");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await Add(keeper, elsewhere)).StatusCode);
        using var careless = Authenticator(keeper);
        careless.Verifies = false;
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await Add(keeper, careless)).StatusCode);
    }

    [Fact]
    public async Task Adding_a_passkey_asks_for_the_password_again()
    {
        await using var server = await RunningServer.Start();
        using var keeper = await server.Keeper();
        Assert.Equal(HttpStatusCode.Forbidden, (await keeper.PostAsJsonAsync("/api/passkeys/offer", new PasskeyOfferAsk("not my password"))).StatusCode);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await keeper.PostAsJsonAsync("/api/passkeys", new PasskeyAsk("{}", "none"))).StatusCode);
    }

    [Fact]
    public async Task A_code_of_the_keeper_takes_the_passkeys_with_the_password()
    {
        await using var server = await RunningServer.Start();
        using var keeper = await server.Keeper();
        using var member = await server.Member(keeper, "tech.one", "", "technician");
        using var passkey = Authenticator(member);
        (await Add(member, passkey)).EnsureSuccessStatusCode();
        (await keeper.PostAsync("/api/people/tech.one/code", null)).EnsureSuccessStatusCode();
        Assert.Equal(HttpStatusCode.Unauthorized, (await SignIn(server.Anybody(), passkey)).StatusCode);
    }

    private static SoftAuthenticator Authenticator(HttpClient client) => new(client.BaseAddress!.GetLeftPart(UriPartial.Authority));

    private static async Task<HttpResponseMessage> Add(HttpClient client, SoftAuthenticator passkey) =>
        await client.PostAsJsonAsync("/api/passkeys", new PasskeyAsk(passkey.Make(await Offer(client, "/api/passkeys/offer", new PasskeyOfferAsk(RunningServer.Password))), "tablet one"));

    private static async Task<HttpResponseMessage> SignIn(HttpClient client, SoftAuthenticator passkey) =>
        await client.PostAsJsonAsync("/api/sign-in/passkey", new PasskeyAsk(passkey.Show(await Offer(client, "/api/sign-in/passkey/offer"))));

    private static async Task<JsonElement> Offer(HttpClient client, string route, object? ask = null) =>
        await (await client.PostAsJsonAsync(route, ask ?? new { })).EnsureSuccessStatusCode().Content.ReadFromJsonAsync<JsonElement>();
}
