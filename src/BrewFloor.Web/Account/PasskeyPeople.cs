using BrewFloor.Store.People;
using Microsoft.AspNetCore.Identity;

namespace BrewFloor.Web.Account;

/// <summary>People and their passkeys as ASP.NET Core Identity asks for them. It only reads: people are written by the store.</summary>
internal sealed class PasskeyPeople(Accounts accounts, Passkeys passkeys) : IUserPasskeyStore<Person>
{
    public Task<string> GetUserIdAsync(Person user, CancellationToken cancellationToken) =>
        Task.FromResult(user.Id.ToString());

    public Task<string?> GetUserNameAsync(Person user, CancellationToken cancellationToken) =>
        Task.FromResult<string?>(user.Name);

    public Task<string?> GetNormalizedUserNameAsync(Person user, CancellationToken cancellationToken) =>
        Task.FromResult<string?>(user.Name.ToUpperInvariant());

    public Task<Person?> FindByIdAsync(string userId, CancellationToken cancellationToken) =>
        Guid.TryParse(userId, out var id) ? accounts.ByIdAsync(id, cancellationToken) : Task.FromResult<Person?>(null);

    public Task<Person?> FindByNameAsync(string normalizedUserName, CancellationToken cancellationToken) =>
        accounts.ByNameAsync(normalizedUserName, cancellationToken);

    public async Task<IList<UserPasskeyInfo>> GetPasskeysAsync(Person user, CancellationToken cancellationToken) =>
        [.. (await passkeys.OfAsync(user.Id, cancellationToken)).Select(ToInfo)];

    public Task<Person?> FindByPasskeyIdAsync(byte[] credentialId, CancellationToken cancellationToken) =>
        passkeys.OwnerOfAsync(credentialId, cancellationToken);

    public async Task<UserPasskeyInfo?> FindPasskeyAsync(
        Person user,
        byte[] credentialId,
        CancellationToken cancellationToken
    ) =>
        (await passkeys.OfAsync(user.Id, cancellationToken)).FirstOrDefault(passkey =>
            passkey.CredentialId.AsSpan().SequenceEqual(credentialId)
        )
            is { } found
            ? ToInfo(found)
            : null;

    public Task AddOrUpdatePasskeyAsync(Person user, UserPasskeyInfo passkey, CancellationToken cancellationToken) =>
        throw Written();

    public Task RemovePasskeyAsync(Person user, byte[] credentialId, CancellationToken cancellationToken) =>
        throw Written();

    public Task SetUserNameAsync(Person user, string? userName, CancellationToken cancellationToken) => throw Written();

    public Task SetNormalizedUserNameAsync(Person user, string? normalizedName, CancellationToken cancellationToken) =>
        throw Written();

    public Task<IdentityResult> CreateAsync(Person user, CancellationToken cancellationToken) => throw Written();

    public Task<IdentityResult> UpdateAsync(Person user, CancellationToken cancellationToken) => throw Written();

    public Task<IdentityResult> DeleteAsync(Person user, CancellationToken cancellationToken) => throw Written();

    public void Dispose()
    {
        // Nothing is held.
    }

    /// <summary>As the store keeps it.</summary>
    public static Passkey ToPasskey(UserPasskeyInfo info, string name) =>
        new(info.CredentialId, name, info.PublicKey, info.SignCount)
        {
            Transports = [.. info.Transports ?? []],
            IsUserVerified = info.IsUserVerified,
            IsBackupEligible = info.IsBackupEligible,
            IsBackedUp = info.IsBackedUp,
            AttestationObject = info.AttestationObject,
            ClientDataJson = info.ClientDataJson,
            CreatedAt = info.CreatedAt,
        };

    private static UserPasskeyInfo ToInfo(Passkey passkey) =>
        new(
            passkey.CredentialId,
            passkey.PublicKey,
            passkey.CreatedAt,
            passkey.SignCount,
            [.. passkey.Transports],
            passkey.IsUserVerified,
            passkey.IsBackupEligible,
            passkey.IsBackedUp,
            passkey.AttestationObject,
            passkey.ClientDataJson
        );

    private static NotSupportedException Written() =>
        new("People are written by the store's Accounts, not by Identity.");
}
