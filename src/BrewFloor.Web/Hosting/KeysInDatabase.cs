using System.Security.Cryptography;
using System.Text;
using System.Xml.Linq;
using BrewFloor.Store;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.DataProtection.EntityFrameworkCore;
using Microsoft.AspNetCore.DataProtection.KeyManagement;
using Microsoft.AspNetCore.DataProtection.Repositories;
using Microsoft.AspNetCore.DataProtection.XmlEncryption;
using Microsoft.Extensions.Options;

namespace BrewFloor.Web.Hosting;

/// <summary>The keys of cookies and forms: in the database, for every instance, and sealed by a secret that isn't in it.</summary>
internal static class KeysInDatabase
{
    public static IServiceCollection AddKeys(this IServiceCollection services, StartOptions options)
    {
        services.AddSingleton(_ => FloorSecret.Of(options.DataFolder, Environment.GetEnvironmentVariable));
        services.AddDataProtection().SetApplicationName("BrewFloor");
        services.AddSingleton<IConfigureOptions<KeyManagementOptions>>(
            provider => new ConfigureOptions<KeyManagementOptions>(keys =>
            {
                keys.XmlRepository = new WhenReady(provider);
                keys.XmlEncryptor = new Seal(provider.GetRequiredService<FloorSecret>());
            })
        );
        return services;
    }

    /// <summary>
    /// The framework reads the keys while it starts, before there is a database, and complains; here they are read when needed.
    /// Whatever else is added brings that along again, so this comes last.
    /// </summary>
    public static void ReadKeysWhenNeeded(this IServiceCollection services)
    {
        foreach (
            var early in services.Where(s => s.ImplementationType?.Name is "DataProtectionHostedService").ToArray()
        )
        {
            services.Remove(early);
        }
    }

    /// <summary>Keys are asked for when a page is, and pages wait for the database; so does this.</summary>
    private sealed class WhenReady(IServiceProvider provider) : IXmlRepository
    {
        private readonly EntityFrameworkCoreXmlRepository<FloorDb> _database = new(
            provider,
            provider.GetRequiredService<ILoggerFactory>()
        );

        public IReadOnlyCollection<XElement> GetAllElements() => Ready().GetAllElements();

        public void StoreElement(XElement element, string friendlyName) => Ready().StoreElement(element, friendlyName);

        private EntityFrameworkCoreXmlRepository<FloorDb> Ready() =>
            provider.GetRequiredService<Readiness>().IsReady
                ? _database
                : throw new InvalidOperationException("The database isn't there yet.");
    }

    /// <summary>AES-256-GCM: nonce, tag, text.</summary>
    private sealed class Seal(FloorSecret secret) : IXmlEncryptor
    {
        public EncryptedXmlInfo Encrypt(XElement plaintextElement)
        {
            var plain = Encoding.UTF8.GetBytes(plaintextElement.ToString(SaveOptions.DisableFormatting));
            var box = new byte[SealedKey.Nonce + SealedKey.Tag + plain.Length];
            var nonce = box.AsSpan(0, SealedKey.Nonce);
            RandomNumberGenerator.Fill(nonce);
            using var aes = new AesGcm(secret.Key, SealedKey.Tag);
            aes.Encrypt(
                nonce,
                plain,
                box.AsSpan(SealedKey.Nonce + SealedKey.Tag),
                box.AsSpan(SealedKey.Nonce, SealedKey.Tag)
            );
            return new(new XElement("sealed", Convert.ToBase64String(box)), typeof(SealedKey));
        }
    }
}

/// <summary>Opens what was sealed; its name is stored beside every key and never changes.</summary>
internal sealed class SealedKey(IServiceProvider provider) : IXmlDecryptor
{
    internal const int Nonce = 12;
    internal const int Tag = 16;

    public XElement Decrypt(XElement encryptedElement)
    {
        var box = Convert.FromBase64String(encryptedElement.Value).AsSpan();
        var plain = new byte[box.Length - Nonce - Tag];
        using var aes = new AesGcm(provider.GetRequiredService<FloorSecret>().Key, Tag);
        aes.Decrypt(box[..Nonce], box[(Nonce + Tag)..], box.Slice(Nonce, Tag), plain);
        return XElement.Parse(Encoding.UTF8.GetString(plain));
    }
}
