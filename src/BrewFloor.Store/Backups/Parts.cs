using System.Buffers.Binary;
using System.Text;
using BrewFloor.Store.PrivateServer;

namespace BrewFloor.Store.Backups;

/// <summary>Named parts one after the other, none of whose length must be known before it is written.</summary>
/// <remarks>A part: the length of its name (2 bytes), the name, blocks with their length (4 bytes) before each, a length of 0.</remarks>
internal sealed class PartWriter(SealedWriter to)
{
    public async Task WriteAsync(string name, Stream content, CancellationToken stop)
    {
        var bytes = Encoding.UTF8.GetBytes(name);
        var length = new byte[sizeof(ushort)];
        BinaryPrimitives.WriteUInt16BigEndian(length, checked((ushort)bytes.Length));
        await to.WriteAsync(length, stop);
        await to.WriteAsync(bytes, stop);

        var block = new byte[Parts.LongestBlock];
        int came;
        do
        {
            came = await content.ReadAsync(block, stop);
            var said = new byte[sizeof(uint)];
            BinaryPrimitives.WriteUInt32BigEndian(said, (uint)came);
            await to.WriteAsync(said, stop);
            await to.WriteAsync(block.AsMemory(0, came), stop);
        } while (came > 0);
    }

    public async Task EndAsync(CancellationToken stop)
    {
        await to.WriteAsync(new byte[sizeof(ushort)], stop);
        await to.EndAsync(stop);
    }
}

/// <summary>Reads what <see cref="PartWriter"/> wrote. A part that isn't taken is read past.</summary>
internal sealed class PartReader(SealedReader from, string file)
{
    private bool _isTaken = true;

    /// <returns>The name of the next part; <see langword="null"/> at the end of all, which was then read to its last byte.</returns>
    public async Task<string?> NextAsync(CancellationToken stop)
    {
        if (!_isTaken)
        {
            await CopyToAsync(Stream.Null, stop);
        }

        var length = new byte[sizeof(ushort)];
        await from.ReadExactlyAsync(length, stop);
        var name = new byte[BinaryPrimitives.ReadUInt16BigEndian(length)];
        if (name.Length == 0)
        {
            return await from.ReadAsync(new byte[1], stop) == 0 ? null : throw BackupProblems.Altered(file);
        }

        await from.ReadExactlyAsync(name, stop);
        _isTaken = false;
        return Encoding.UTF8.GetString(name);
    }

    public async Task CopyToAsync(Stream to, CancellationToken stop)
    {
        var (said, block) = (new byte[sizeof(uint)], new byte[Parts.LongestBlock]);
        while (true)
        {
            await from.ReadExactlyAsync(said, stop);
            switch (BinaryPrimitives.ReadUInt32BigEndian(said))
            {
                case 0:
                    _isTaken = true;
                    return;
                case <= Parts.LongestBlock and var length:
                    await from.ReadExactlyAsync(block.AsMemory(0, (int)length), stop);
                    await to.WriteAsync(block.AsMemory(0, (int)length), stop);
                    break;
                default:
                    throw BackupProblems.Altered(file);
            }
        }
    }
}

/// <summary>What the parts of a backup are called.</summary>
internal static class Parts
{
    public const int LongestBlock = 64 * 1024;

    /// <summary>What was counted in the very snapshot that was dumped, as JSON.</summary>
    public const string Tally = "tally.json";

    /// <summary>The database, as <c>pg_dump --format=custom</c> wrote it.</summary>
    public const string Database = "database.dump";

    /// <summary>Before the path of a file in the data folder.</summary>
    public const string Files = "data/";
}
