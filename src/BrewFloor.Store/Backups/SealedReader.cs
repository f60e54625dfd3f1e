using System.Buffers.Binary;
using System.Security.Cryptography;
using BrewFloor.Store.PrivateServer;

namespace BrewFloor.Store.Backups;

/// <summary>Opens a sealed file chunk by chunk: nothing comes out of it that wasn't sealed there, in this order, up to its end.</summary>
internal sealed class SealedReader : IDisposable
{
    private readonly Stream _from;
    private readonly string _file;
    private readonly SealKeys _keys;
    private readonly byte[] _plain = new byte[SealKeys.Chunk];
    private readonly byte[] _frame = new byte[SealKeys.Chunk + SealKeys.TagLength];
    private int _at;
    private int _filled;
    private ulong _number;
    private bool _isOver;

    private SealedReader(Stream from, string file, SealHead head, SealKeys keys) =>
        (_from, _file, Head, _keys) = (from, file, head, keys);

    public SealHead Head { get; }

    /// <param name="file">For the sentences.</param>
    /// <exception cref="PrivateServerProblem">Not a backup, of a newer format, cut short, or another passphrase.</exception>
    public static async Task<SealedReader> BeginAsync(
        Stream from,
        string file,
        Passphrase passphrase,
        CancellationToken stop
    )
    {
        var (head, bytes) = await SealHead.ReadAsync(from, file, stop);
        var headSeal = new byte[SealKeys.HeadSealLength];
        if (!await IsFilledAsync(from, headSeal, stop))
        {
            throw BackupProblems.CutShort(file);
        }

        var keys = SealKeys.Of(passphrase, head, bytes);
        if (CryptographicOperations.FixedTimeEquals(keys.HeadSeal, headSeal))
        {
            return new(from, file, head, keys);
        }

        keys.Dispose();
        throw BackupProblems.WrongPassphrase(file);
    }

    /// <returns>How many bytes came; 0: the end, and it is the end that was sealed.</returns>
    /// <exception cref="PrivateServerProblem">It was cut short or altered.</exception>
    public async ValueTask<int> ReadAsync(Memory<byte> plain, CancellationToken stop)
    {
        while (_at == _filled)
        {
            if (_isOver)
            {
                return 0;
            }

            await OpenNextAsync(stop);
        }

        var taken = Math.Min(plain.Length, _filled - _at);
        _plain.AsMemory(_at, taken).CopyTo(plain);
        _at += taken;
        return taken;
    }

    /// <summary>All of it, or the file is not what was sealed.</summary>
    public async Task ReadExactlyAsync(Memory<byte> plain, CancellationToken stop)
    {
        while (!plain.IsEmpty)
        {
            var came = await ReadAsync(plain, stop);
            plain = came > 0 ? plain[came..] : throw BackupProblems.Altered(_file);
        }
    }

    public void Dispose() => _keys.Dispose();

    private async Task OpenNextAsync(CancellationToken stop)
    {
        var word = new byte[sizeof(uint)];
        if (!await IsFilledAsync(_from, word, stop))
        {
            throw BackupProblems.CutShort(_file);
        }

        var said = BinaryPrimitives.ReadUInt32BigEndian(word);
        var (length, isLast) = ((int)(said & ~SealedWriter.IsLast), (said & SealedWriter.IsLast) != 0);
        if (length < SealKeys.TagLength || length > _frame.Length)
        {
            throw BackupProblems.Altered(_file);
        }

        var chunk = _frame.AsMemory(0, length);
        if (!await IsFilledAsync(_from, chunk, stop))
        {
            throw BackupProblems.CutShort(_file);
        }

        if (!_keys.Opens(_number++, isLast, chunk.Span, _plain) || (isLast && !await IsAtEndAsync(stop)))
        {
            throw BackupProblems.Altered(_file);
        }

        (_at, _filled, _isOver) = (0, length - SealKeys.TagLength, isLast);
    }

    private async Task<bool> IsAtEndAsync(CancellationToken stop) => await _from.ReadAsync(new byte[1], stop) == 0;

    private static async Task<bool> IsFilledAsync(Stream from, Memory<byte> wanted, CancellationToken stop) =>
        await from.ReadAtLeastAsync(wanted, wanted.Length, throwOnEndOfStream: false, stop) == wanted.Length;
}
