using System.Security.Cryptography;
using System.Text;
using BrewFloor.Store.Backups;
using BrewFloor.Store.PrivateServer;

namespace BrewFloor.Store.Tests.Backups;

/// <summary>The seal itself: what was written comes out, and nothing else does.</summary>
public sealed class SealTests
{
    private const int Chunk = SealKeys.Chunk;
    private const int Frame = sizeof(uint) + Chunk + SealKeys.TagLength;

    private static readonly Passphrase Right = Passphrase.Of("four kettles under snow");
    private static readonly SealHead Usual = SealHead.New("", DateTimeOffset.UnixEpoch);
    private static readonly SealHead Head = Usual with { Iterations = 220_000 }; // the fewest: these tests open often
    private static readonly byte[] HeadBytes = Head.ToBytes();
    private static readonly int Begin = HeadBytes.Length + SealKeys.HeadSealLength;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(Chunk - 1)]
    [InlineData(Chunk)] // the last chunk is full
    [InlineData(Chunk + 1)]
    [InlineData((3 * Chunk) + 17)]
    public async Task What_was_sealed_comes_out_as_it_was(int length)
    {
        var plain = RandomNumberGenerator.GetBytes(length);

        Assert.Equal(plain, await OpenAsync(await SealAsync(plain), Right));
    }

    [Fact]
    public async Task Nothing_of_what_was_sealed_can_be_read_in_the_file()
    {
        var plain = Encoding.UTF8.GetBytes(string.Concat(Enumerable.Repeat("Harvest Ale, batch 118. ", 5000)));

        var file = await SealAsync(plain);

        Assert.Equal(-1, file.AsSpan().IndexOf("Harvest"u8));
        Assert.NotEqual(-1, plain.AsSpan().IndexOf("Harvest"u8)); // the search finds it where it is
    }

    [Fact]
    public async Task The_same_under_the_same_passphrase_is_never_the_same_file_twice()
    {
        var plain = new byte[Chunk];
        var other = SealHead.New("", DateTimeOffset.UnixEpoch);

        Assert.NotEqual(
            (await SealAsync(plain))[Begin..],
            (await SealAsync(plain, other))[(other.ToBytes().Length + SealKeys.HeadSealLength)..]
        );
    }

    [Theory]
    [InlineData("four kettles under rain")]
    [InlineData("")]
    public async Task Another_passphrase_opens_nothing(string other) =>
        Assert.Equal("wrong-passphrase", await RefusedAsync(await SealAsync(new byte[10]), Passphrase.Of(other)));

    [Fact]
    public async Task Blanks_around_it_and_the_way_an_accent_is_typed_do_not_matter()
    {
        var file = await SealAsync("malt"u8.ToArray(), passphrase: Passphrase.Of("caf\u00e9 by the brewhouse\n"));

        Assert.Equal("malt"u8.ToArray(), await OpenAsync(file, Passphrase.Of(" cafe\u0301 by the brewhouse")));
    }

    [Fact]
    public async Task A_file_that_ends_too_early_is_told_from_a_whole_one_wherever_it_ends()
    {
        var file = await SealAsync(new byte[(2 * Chunk) + 5]);
        int[] ends =
        [
            Begin - 1,
            Begin, // between two chunks nothing but the missing end tells
            Begin + 2,
            Begin + Frame,
            Begin + Frame + 100,
            Begin + (2 * Frame),
            file.Length - 1,
        ];

        foreach (var end in ends)
        {
            Assert.Equal("backup-cut-short", await RefusedAsync(file[..end], Right));
        }
    }

    [Fact]
    public async Task Whatever_bit_is_turned_the_file_is_refused()
    {
        var file = await SealAsync(new byte[100]);
        var random = new Random(118);
        for (var at = 0; at < file.Length; at += at < Begin ? 23 : 7)
        {
            var turned = file.ToArray();
            turned[at] ^= (byte)(1 << random.Next(8));
            await RefusedAsync(turned, Right);
        }
    }

    [Theory]
    [InlineData("swapped")]
    [InlineData("left out")]
    [InlineData("twice")]
    [InlineData("more after the end")]
    [InlineData("end marked earlier")]
    public async Task Chunks_in_another_order_or_number_are_refused(string how)
    {
        var file = await SealAsync(RandomNumberGenerator.GetBytes((2 * Chunk) + 5));
        var (head, first, second, last) = (
            file[..Begin],
            file[Begin..(Begin + Frame)],
            file[(Begin + Frame)..(Begin + (2 * Frame))],
            file[(Begin + (2 * Frame))..]
        );
        byte[] marked = [(byte)(first[0] | 0x80), .. first[1..]];
        byte[] changed = how switch
        {
            "swapped" => [.. head, .. second, .. first, .. last],
            "left out" => [.. head, .. first, .. last],
            "twice" => [.. head, .. first, .. first, .. second, .. last],
            "more after the end" => [.. file, 0],
            _ => [.. head, .. marked],
        };

        Assert.Equal("backup-altered", await RefusedAsync(changed, Right));
    }

    [Fact]
    public async Task Chunks_under_the_head_of_another_file_are_refused()
    {
        var (one, other) = (await SealAsync(new byte[10]), SealHead.New("", DateTimeOffset.UnixEpoch));
        var head = (await SealAsync([], other))[..(other.ToBytes().Length + SealKeys.HeadSealLength)];

        Assert.Equal("backup-altered", await RefusedAsync([.. head, .. one[Begin..]], Right));
    }

    [Theory]
    [InlineData("", "not-a-backup")]
    [InlineData("PGDMP and so on", "not-a-backup")]
    [InlineData("BrewFloor backup 2\n{}", "backup-newer")]
    [InlineData("BrewFloor backup x\n{}", "backup-altered")]
    [InlineData("BrewFloor backup 1\n{}\n", "backup-altered")]
    [InlineData("BrewFloor backup 1\nnull\n", "backup-altered")]
    [InlineData(
        """BrewFloor backup 1|{"app":"1","schema":"","made":"2026-11-25T00:00:00Z","iterations":1000,"salt":"AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA="}|""",
        "backup-altered" // stretched too little: nobody made that
    )]
    public async Task What_is_no_backup_of_this_format_is_told_apart(string text, string code) =>
        Assert.Equal(
            code,
            await RefusedAsync(Encoding.UTF8.GetBytes(text.Replace('|', '\n') + new string('.', 64)), Right)
        );

    [Fact]
    public void The_passphrase_is_stretched_as_often_as_the_docs_say()
    {
        Assert.Equal(600_000, Usual.Iterations);
        Assert.Equal(32, Usual.Salt.Length);
    }

    private static async Task<byte[]> SealAsync(byte[] plain, SealHead? head = null, Passphrase? passphrase = null)
    {
        using var to = new MemoryStream();
        using var writer = await SealedWriter.BeginAsync(to, head ?? Head, passphrase ?? Right, Stop);
        await writer.WriteAsync(plain, Stop);
        await writer.EndAsync(Stop);
        return to.ToArray();
    }

    private static async Task<byte[]> OpenAsync(byte[] file, Passphrase passphrase)
    {
        using var from = new MemoryStream(file);
        using var reader = await SealedReader.BeginAsync(from, "club.backup", passphrase, Stop);
        using var plain = new MemoryStream();
        var block = new byte[10_000];
        while (await reader.ReadAsync(block, Stop) is > 0 and var came)
        {
            await plain.WriteAsync(block.AsMemory(0, came), Stop);
        }

        return plain.ToArray();
    }

    private static async Task<string> RefusedAsync(byte[] file, Passphrase passphrase) =>
        (await Assert.ThrowsAsync<PrivateServerProblem>(() => OpenAsync(file, passphrase))).Code;
}
