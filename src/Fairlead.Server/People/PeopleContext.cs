using Microsoft.AspNetCore.Identity.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore;

namespace Fairlead.Server.People;

/// <summary>Members, their sessions, and the sign-ins that were tried. The tables are made by <see cref="PeopleSchema"/>.</summary>
internal sealed class PeopleContext(DbContextOptions<PeopleContext> options) : IdentityUserContext<Member>(options)
{
    public DbSet<Session> Sessions => Set<Session>();

    public DbSet<SignInTry> SignIns => Set<SignInTry>();

    protected override void OnModelCreating(ModelBuilder builder)
    {
        base.OnModelCreating(builder);
        builder.Entity<Member>().Ignore(m => m.RoleList);
        builder.Entity<Session>().HasOne<Member>().WithMany().HasForeignKey(s => s.MemberId).OnDelete(DeleteBehavior.Cascade);
        builder.Entity<Session>().ToTable("Sessions").HasIndex(s => s.MemberId);
        builder.Entity<SignInTry>().ToTable("SignIns");
    }
}
