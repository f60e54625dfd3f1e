using BrewFloor.Domain.Log;

namespace BrewFloor.Domain.Tests.Log;

/// <summary>C# has no closed hierarchies: these tests are what the compiler would say about a kind with a part forgotten.</summary>
public class EntryKindsTests
{
    private static readonly Type[] Kinds =
    [
        .. typeof(LogEntry).Assembly.GetTypes().Where(t => t.IsSubclassOf(typeof(LogEntry)) && !t.IsAbstract),
    ];

    [Fact]
    public void Every_kind_is_sealed_and_has_a_stored_name() =>
        Assert.DoesNotContain(Kinds, kind => !kind.IsSealed || !EntryKinds.ByName.Values.Contains(kind));

    [Fact]
    public void Every_stored_name_is_a_kind_of_its_own() =>
        Assert.Equal(EntryKinds.ByName.Count, EntryKinds.ByName.Values.Distinct().Count());

    [Fact]
    public void Every_kind_has_a_stored_sample() => Assert.Empty(WithoutSample(EntryKinds.ByName.Keys));

    [Fact]
    public void The_sample_check_can_fail() => Assert.Equal(["krausened"], WithoutSample(["krausened"]));

    [Fact]
    public void No_sample_is_left_of_a_kind_that_is_gone() =>
        Assert.Empty(Samples.Names.Except(EntryKinds.ByName.Keys));

    [Fact]
    public void Every_sample_names_what_it_is_about() =>
        Assert.All(EntryKinds.ByName.Keys, kind => Assert.NotEmpty(Samples.Read(kind)));

    private static IEnumerable<string> WithoutSample(IEnumerable<string> kinds) => kinds.Except(Samples.Names);
}
