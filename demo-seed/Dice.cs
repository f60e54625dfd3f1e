using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;

namespace BrewFloor.DemoSeed;

/// <summary>Chance that falls the same way every time: what it says depends on what is asked, not on the order.</summary>
/// <param name="start">Ids are others for another start; the story stays the same.</param>
internal sealed class Dice(string start)
{
    /// <summary>An id of a name.</summary>
    /// <remarks>RFC 9562, version 8: the bits are our own, from SHA-256.</remarks>
    public Guid Id(string name)
    {
        Span<byte> bytes = Thrown($"{start}/{name}").AsSpan(0, 16);
        bytes[6] = (byte)((bytes[6] & 0x0F) | 0x80);
        bytes[8] = (byte)((bytes[8] & 0x3F) | 0x80);
        return new Guid(bytes, bigEndian: true);
    }

    /// <summary>A whole number from 0 to <paramref name="sides"/> - 1.</summary>
    public static int Below(string what, int sides) => (int)(Share(what) * sides);

    /// <summary>A number within <paramref name="most"/> of nothing, to either side.</summary>
    public static double Swing(string what, double most) => ((2 * Share(what)) - 1) * most;

    // 0 to 1, without 1.
    private static double Share(string what) =>
        (BinaryPrimitives.ReadUInt64BigEndian(Thrown(what)) >> 11) * (1.0 / (1UL << 53));

    private static byte[] Thrown(string what) => SHA256.HashData(Encoding.UTF8.GetBytes(what));
}
