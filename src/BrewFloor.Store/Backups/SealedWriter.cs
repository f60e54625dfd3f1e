using System.Buffers.Binary;

namespace BrewFloor.Store.Backups;

/// <summary>Seals what is written into it, chunk by chunk. Without <see cref="EndAsync"/> nobody takes the file for whole.</summary>
internal sealed class SealedWriter : IDisposable
{
    /// <summary>Set in the length before the last chunk.</summary>
    public const uint IsLast = 1u << 31;

    private readonly Stream _to;
    private readonly SealKeys _keys;
    private readonly byte[] _plain = new byte[SealKeys.Chunk];
    private readonly byte[] _frame = new byte[sizeof(uint) + SealKeys.Chunk + SealKeys.TagLength];
    private int _filled;
    private ulong _number;

    private SealedWriter(Stream to, SealKeys keys) => (_to, _keys) = (to, keys);

    public static async Task<SealedWriter> BeginAsync(
        Stream to,
        SealHead head,
        Passphrase passphrase,
        CancellationToken stop
    )
    {
        var bytes = head.ToBytes();
        var keys = SealKeys.Of(passphrase, head, bytes);
        await to.WriteAsync(bytes, stop);
        await to.WriteAsync(keys.HeadSeal, stop);
        return new(to, keys);
    }

    public async Task WriteAsync(ReadOnlyMemory<byte> plain, CancellationToken stop)
    {
        while (!plain.IsEmpty)
        {
            if (_filled == _plain.Length)
            {
                await SealAsync(isLast: false, stop);
            }

            var taken = Math.Min(plain.Length, _plain.Length - _filled);
            plain[..taken].CopyTo(_plain.AsMemory(_filled));
            _filled += taken;
            plain = plain[taken..];
        }
    }

    public Task EndAsync(CancellationToken stop) => SealAsync(isLast: true, stop);

    public void Dispose() => _keys.Dispose();

    private async Task SealAsync(bool isLast, CancellationToken stop)
    {
        var length = _filled + SealKeys.TagLength;
        BinaryPrimitives.WriteUInt32BigEndian(_frame, (uint)length | (isLast ? IsLast : 0));
        _keys.Seal(_number++, isLast, _plain.AsSpan(0, _filled), _frame.AsSpan(sizeof(uint), length));
        await _to.WriteAsync(_frame.AsMemory(0, sizeof(uint) + length), stop);
        _filled = 0;
    }
}
