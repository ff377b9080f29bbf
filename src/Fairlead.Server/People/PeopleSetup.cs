using Fairlead.Server.Hosting;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection.Extensions;

namespace Fairlead.Server.People;

/// <summary>People and signing in, as they are set up.</summary>
internal static class PeopleSetup
{
    private const int Tries = 5;
    private const int ShutMinutes = 15;
    private const int ShiftHours = 12;
    private const int OfferMinutes = 5;

    public static void AddPeople(this IServiceCollection services, ServerOptions options)
    {
        PeopleSchema.Upgrade(options.People);
        services.AddDbContextFactory<PeopleContext>(o => o.UseSqlite(PeopleSchema.Connection(options.People)));
        services.AddSingleton<Sessions>().AddSingleton<SignInAudit>().AddSingleton<SignInTurns>();
        services.AddSingleton(s => new FirstKey(options.Lan && NoKeeper(s.GetRequiredService<IDbContextFactory<PeopleContext>>())));
        services.AddDataProtection().SetApplicationName("fairlead").PersistKeysToFileSystem(new DirectoryInfo(PrivateFiles.Folder(options.Keys)));
        services.AddIdentityCore<Member>(Identity).AddEntityFrameworkStores<PeopleContext>().AddSignInManager().AddClaimsPrincipalFactory<MemberClaims>();
        services.AddScoped<IPasswordHasher<Member>, ArgonHasher>();
        services.Configure<IdentityPasskeyOptions>(passkeys => (passkeys.UserVerificationRequirement, passkeys.ResidentKeyRequirement) = ("required", "required"));
        services.RemoveAll<IPasswordValidator<Member>>().AddScoped<IPasswordValidator<Member>, PasswordRules>();
        Cookies(services, options.Lan);
    }

    private static void Identity(IdentityOptions identity)
    {
        identity.Stores.SchemaVersion = IdentitySchemaVersions.Version3;
        identity.Lockout.MaxFailedAccessAttempts = Tries;
        identity.Lockout.DefaultLockoutTimeSpan = TimeSpan.FromMinutes(ShutMinutes);
    }

    private static void Cookies(IServiceCollection services, bool lan)
    {
        var authentication = services.AddAuthentication(lan ? IdentityConstants.ApplicationScheme : LocalSignIn.SchemeName)
            .AddScheme<AuthenticationSchemeOptions, LocalSignIn>(LocalSignIn.SchemeName, configureOptions: null);
        authentication.AddCookie(IdentityConstants.ApplicationScheme, cookie =>
        {
            Harden(cookie, "__Host-fairlead");
            (cookie.ExpireTimeSpan, cookie.SlidingExpiration) = (TimeSpan.FromHours(ShiftHours), false);
        });
        // What was offered to an authenticator is kept here until it answers.
        authentication.AddCookie(IdentityConstants.TwoFactorUserIdScheme, cookie =>
        {
            Harden(cookie, "__Host-fairlead-offer");
            cookie.ExpireTimeSpan = TimeSpan.FromMinutes(OfferMinutes);
        });
        services.AddOptions<CookieAuthenticationOptions>(IdentityConstants.ApplicationScheme).Configure<Sessions>((cookie, sessions) => cookie.SessionStore = sessions);
    }

    private static void Harden(CookieAuthenticationOptions cookie, string name)
    {
        cookie.Cookie.Name = name;
        (cookie.Cookie.HttpOnly, cookie.Cookie.SecurePolicy, cookie.Cookie.SameSite, cookie.Cookie.Path) = (true, CookieSecurePolicy.Always, SameSiteMode.Strict, "/");
        cookie.Events.OnRedirectToLogin = context => Answer(context.Response, StatusCodes.Status401Unauthorized);
        cookie.Events.OnRedirectToAccessDenied = context => Answer(context.Response, StatusCodes.Status403Forbidden);
    }

    private static Task Answer(HttpResponse response, int status)
    {
        response.StatusCode = status;
        return Task.CompletedTask;
    }

    private static bool NoKeeper(IDbContextFactory<PeopleContext> people)
    {
        using var context = people.CreateDbContext();
        return !context.Users.AsNoTracking().AsEnumerable().Any(m => m.RoleList.Contains(Policies.Keeper));
    }
}
