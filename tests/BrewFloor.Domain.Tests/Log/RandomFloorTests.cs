using System.Collections.Immutable;
using BrewFloor.Domain.Log;
using CsCheck;

namespace BrewFloor.Domain.Tests.Log;

/// <summary>Laws of the log, on floors at random.</summary>
public class RandomFloorTests(ITestOutputHelper output)
{
    private const int Seed = 20260302;

    [Fact]
    public void Every_kind_is_stored_a_hundred_times_and_most_entries_fit()
    {
        var (floor, random, tried) = Play(Seed, enough: random => random.Counts.Values.Min() >= 100, atMost: 12_000);

        output.WriteLine($"{random.Stored.Count} of {tried} stored");
        foreach (var (kind, count) in random.Counts.OrderBy(k => k.Value))
        {
            output.WriteLine($"{kind}: {count}");
        }

        Assert.Equal(EntryKinds.ByName.Keys.Order(), random.Counts.Keys.Order());
        Assert.True(random.Counts.Values.Min() >= 100, $"{random.Counts.MinBy(k => k.Value)}");
        Assert.True(random.Stored.Count * 2 >= tried);
        Assert.Equal(floor.Log.Count, random.Stored.Count);
    }

    [Fact]
    public void The_log_folded_from_nothing_is_the_floor_as_it_was_kept() =>
        Gen.Int.Sample(
            seed =>
            {
                var floor = Play(seed).Floor;
                AssertSame(floor.States, PlayedFloor.Fold(AsItStands.Of(floor.Log)));
            },
            iter: 12
        );

    [Fact]
    public void The_check_of_the_folds_can_fail()
    {
        var floor = Play(Seed).Floor;
        var withoutCounts = floor.Log.Where(line => line.Entry is not Domain.Yeast.Counted);

        Assert.ThrowsAny<Exception>(() => AssertSame(floor.States, PlayedFloor.Fold(AsItStands.Of(withoutCounts))));
    }

    [Fact]
    public void Only_time_and_place_in_the_log_order_it() =>
        Gen.Select(Gen.Int, Gen.Int)
            .Sample(
                (seed, shuffle) =>
                {
                    var log = Play(seed).Floor.Log.ToArray();
                    var shuffled = log.ToArray();
                    new Random(shuffle).Shuffle(shuffled);
                    AssertSame(PlayedFloor.Fold(AsItStands.Of(log)), PlayedFloor.Fold(AsItStands.Of(shuffled)));
                },
                iter: 6
            );

    [Fact]
    public void A_struck_entry_leaves_the_floor_as_if_it_had_never_been() =>
        Gen.Select(Gen.Int, Gen.Double[0, 1])
            .Sample(
                (seed, share) =>
                {
                    var log = Play(seed).Floor.Log.ToArray();
                    LogEntry[] plain = [.. log.Select(l => l.Entry).Where(e => e is not (Struck or Corrected))];
                    var gone = plain[(int)(share * (plain.Length - 1))].Id;
                    var without = log.Where(l => l.Entry.Id != gone && (l.Entry as Corrected)?.Entry != gone);
                    var struck = new Struck([gone], "Never was") { Id = Guid.CreateVersion7() };
                    AssertSame(
                        PlayedFloor.Fold(AsItStands.Of(without)),
                        PlayedFloor.Fold(AsItStands.Of(log.Append((log.Length + 1, struck))))
                    );
                },
                iter: 6
            );

    [Fact]
    public void No_order_of_entries_breaks_a_fold() =>
        Gen.Select(Gen.Int, Gen.Int)
            .Sample(
                (seed, shuffle) =>
                {
                    LogEntry[] entries = [.. AsItStands.Of(Play(seed).Floor.Log)];
                    new Random(shuffle).Shuffle(entries);
                    PlayedFloor.Fold(entries);
                },
                iter: 6
            );

    private static (PlayedFloor Floor, RandomFloor Random, int Tried) Play(int seed) =>
        Play(seed, _ => false, atMost: 600);

    private static (PlayedFloor Floor, RandomFloor Random, int Tried) Play(
        int seed,
        Func<RandomFloor, bool> enough,
        int atMost
    )
    {
        var random = new RandomFloor(seed);
        var floor = new PlayedFloor(random.Empty);
        var tried = 0;
        while (tried < atMost && !enough(random))
        {
            tried++;
            if (floor.Append(random.Next(floor.Now)) is { } stored)
            {
                random.WasStored(stored);
            }
        }

        return (floor, random, tried);
    }

    private static void AssertSame(ImmutableDictionary<Subject, State> one, ImmutableDictionary<Subject, State> other)
    {
        Assert.Equal(one.Keys.ToHashSet(), other.Keys.ToHashSet());
        Assert.All(one, pair => Assert.Equal(pair.Value, other[pair.Key]));
    }
}
