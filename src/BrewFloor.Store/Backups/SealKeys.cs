using System.Buffers.Binary;
using System.Security.Cryptography;

namespace BrewFloor.Store.Backups;

/// <summary>The two keys of one sealed file: one for its chunks, one that seals its head.</summary>
/// <remarks>
/// Chunks are sealed one by one with AES-256-GCM. The nonce of each is its number and whether it is the last, so that
/// none can be left out, moved or cut off; the head's seal goes into each, so that none fits under another head.
/// </remarks>
internal sealed class SealKeys : IDisposable
{
    public const int TagLength = 16;
    public const int HeadSealLength = 32;
    public const int Chunk = 64 * 1024;

    private const int KeyLength = 32;
    private const int NonceLength = 12;

    private readonly AesGcm _chunks;

    private SealKeys(byte[] keys, byte[] head)
    {
        _chunks = new(keys.AsSpan(0, KeyLength), TagLength);
        HeadSeal = HMACSHA256.HashData(keys.AsSpan(KeyLength), head);
    }

    public byte[] HeadSeal { get; }

    public static SealKeys Of(Passphrase passphrase, SealHead head, byte[] headBytes)
    {
        // Twice 32 bytes: one block of SHA-512, so that nobody gets the one without the other.
        var keys = passphrase.Stretched(head.Salt, head.Iterations, 2 * KeyLength);
        try
        {
            return new(keys, headBytes);
        }
        finally
        {
            CryptographicOperations.ZeroMemory(keys);
        }
    }

    public void Seal(ulong number, bool isLast, ReadOnlySpan<byte> plain, Span<byte> sealedChunk) =>
        _chunks.Encrypt(
            Nonce(number, isLast),
            plain,
            sealedChunk[..plain.Length],
            sealedChunk.Slice(plain.Length, TagLength),
            HeadSeal
        );

    /// <returns>False: it isn't what was sealed under this number.</returns>
    public bool Opens(ulong number, bool isLast, ReadOnlySpan<byte> sealedChunk, Span<byte> plain)
    {
        try
        {
            _chunks.Decrypt(
                Nonce(number, isLast),
                sealedChunk[..^TagLength],
                sealedChunk[^TagLength..],
                plain[..(sealedChunk.Length - TagLength)],
                HeadSeal
            );
            return true;
        }
        catch (AuthenticationTagMismatchException)
        {
            return false;
        }
    }

    public void Dispose() => _chunks.Dispose();

    private static byte[] Nonce(ulong number, bool isLast)
    {
        var nonce = new byte[NonceLength];
        BinaryPrimitives.WriteUInt64BigEndian(nonce.AsSpan(3), number);
        nonce[^1] = isLast ? (byte)1 : (byte)0;
        return nonce;
    }
}
