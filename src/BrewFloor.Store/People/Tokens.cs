using BrewFloor.Domain;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace BrewFloor.Store.People;

/// <summary>A key for a program, without the key.</summary>
public sealed record Token(
    Guid Id,
    string Name,
    Listed<string> Scopes,
    DateTimeOffset CreatedAt,
    DateTimeOffset? RevokedAt
);

/// <summary>Keys for programs: shown once when made, kept as a hash.</summary>
public sealed class Tokens(IDbContextFactory<FloorDb> databases)
{
    private const string Prefix = "bf_";
    private const int Bytes = 32;
    private const string OneName = "ix_tokens_name_without_case";

    public static readonly Listed<string> Scopes = ["read", "log"];

    /// <param name="scopes">Of <see cref="Scopes"/>.</param>
    /// <param name="by">Null: whoever runs the machine.</param>
    /// <returns>The token and its secret, which nobody can read again. Null: another that is still good has the name.</returns>
    public async Task<(Token Token, string Secret)?> AddAsync(
        string name,
        IEnumerable<string> scopes,
        Guid? by,
        DateTimeOffset now,
        CancellationToken stop
    )
    {
        var secret = Prefix + ShownOnce.Make(Bytes);
        var row = new TokenRow
        {
            Id = Guid.CreateVersion7(),
            Name = name.Trim(),
            Hash = ShownOnce.Hash(secret),
            Scopes = [.. scopes.Distinct(StringComparer.Ordinal)],
            CreatedAt = now.ToUniversalTime(),
            CreatedBy = by,
        };
        await using var db = await databases.CreateDbContextAsync(stop);
        db.Tokens.Add(row);
        try
        {
            await db.SaveChangesAsync(stop);
        }
        catch (DbUpdateException e) when (e.InnerException is PostgresException { ConstraintName: OneName })
        {
            return null;
        }

        return (ToToken(row), secret);
    }

    /// <returns>Null: no such token, or it was revoked.</returns>
    public async Task<Token?> VerifyAsync(string secret, CancellationToken stop)
    {
        var hash = ShownOnce.Hash(secret);
        await using var db = await databases.CreateDbContextAsync(stop);
        var row = await db.Tokens.AsNoTracking().SingleOrDefaultAsync(t => t.Hash == hash && t.RevokedAt == null, stop);
        return row is null ? null : ToToken(row);
    }

    public async Task<Listed<Token>> AllAsync(CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        var rows = await db.Tokens.AsNoTracking().OrderBy(t => t.Name).ToListAsync(stop);
        return [.. rows.Select(ToToken)];
    }

    public async Task RevokeAsync(Guid id, DateTimeOffset now, CancellationToken stop)
    {
        await using var db = await databases.CreateDbContextAsync(stop);
        (await db.Tokens.SingleAsync(t => t.Id == id, stop)).RevokedAt ??= now.ToUniversalTime();
        await db.SaveChangesAsync(stop);
    }

    private static Token ToToken(TokenRow row) => new(row.Id, row.Name, [.. row.Scopes], row.CreatedAt, row.RevokedAt);
}
