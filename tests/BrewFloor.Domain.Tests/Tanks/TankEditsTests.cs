using BrewFloor.Domain.Log;
using BrewFloor.Domain.People;
using BrewFloor.Domain.Tanks;
using static BrewFloor.Domain.Tests.Tanks.BeerLogs;
using static BrewFloor.Domain.Tests.Tanks.TankLogs;

namespace BrewFloor.Domain.Tests.Tanks;

public class TankEditsTests
{
    private static readonly TankState Empty = new(P2.Id);

    [Theory]
    [InlineData("K3", true)]
    [InlineData("A-1234", true)]
    [InlineData("A-12345", false)] // seven
    [InlineData("", false)]
    [InlineData("k3", false)]
    [InlineData("K 3", false)]
    [InlineData("K3\n", false)]
    [InlineData("Ä3", false)]
    public void A_code_is_1_to_6_of_capitals_digits_and_hyphens(string code, bool isTaken) =>
        Assert.Equal(isTaken, !New(K3 with { Code = code }).Contains("tank-code"));

    [Fact]
    public void The_tanks_of_the_tests_may_be_added() =>
        Assert.All([K3, P2, B1, S1, Bucket], tank => Assert.Empty(TankEdits.New(tank, Role.Owner)));

    [Fact]
    public void Only_the_owner_says_what_a_vessel_is_trusted_with()
    {
        Assert.Equal(["rating-is-the-owners"], New(P2, Role.Brewer));
        Assert.Empty(New(K3, Role.Brewer));
        Assert.Equal(["rating-is-the-owners"], Edit(P2, P2 with { Rating = Rated(190) }, Empty, Role.Brewer));
        Assert.Equal(["rating-is-the-owners"], Edit(P2, P2 with { Relief = SetAt(170) }, Empty, Role.Brewer));
        Assert.Empty(Edit(P2, P2 with { Rating = Rated(190) }, Empty, Role.Owner));
    }

    [Fact]
    public void A_brewer_may_note_the_day_of_a_relief_valve_test() =>
        Assert.Empty(Edit(P2, P2 with { Relief = P2.Relief! with { TestedOn = new(2026, 2, 1) } }, Empty, Role.Brewer));

    [Theory]
    [InlineData(200, false)]
    [InlineData(201, true)]
    public void A_relief_valve_opens_before_the_vessel_does(double setting, bool isRefused)
    {
        var tank = P2 with { Relief = SetAt(setting) };

        Assert.Equal(
            isRefused
                ? [Objection.Impossible("relief-above-rating", new("setting", KPa(setting)), new("rating", KPa(200)))]
                : [],
            TankEdits.New(tank, Role.Owner)
        );
    }

    [Fact]
    public void A_rating_names_its_source_and_is_above_nothing()
    {
        Assert.Contains("rating-without-source", New(P2 with { Rating = new(KPa(200), (RatingSource)9) }));
        Assert.Contains("rating-not-above-nothing", New(P2 with { Rating = Rated(0) }));
    }

    [Theory]
    [InlineData(121, false)]
    [InlineData(120, false)]
    [InlineData(119, true)]
    public void No_rating_goes_below_the_pressure_held(double rating, bool isRefused) =>
        Assert.Equal(
            isRefused,
            Edit(P2, P2 with { Rating = Rated(rating), Relief = SetAt(rating) }, Held(120)).Contains("holds-pressure")
        );

    [Fact]
    public void Rating_and_relief_valve_are_not_taken_away_under_pressure()
    {
        Assert.Equal(["holds-pressure"], Edit(P2, P2 with { Rating = null }, Held(10)));
        Assert.Equal(["holds-pressure"], Edit(P2, P2 with { Relief = null }, Held(10)));
        Assert.Empty(Edit(P2, P2 with { Rating = null }, Held(0)));
    }

    [Fact]
    public void Where_nobody_knows_the_pressure_it_is_read_first() =>
        Assert.Equal(
            ["read-pressure-first"],
            Edit(P2, P2 with { Rating = Rated(190) }, Held(10) with { IsPressureInDoubt = true })
        );

    [Fact]
    public void No_rating_goes_below_what_the_valve_is_told_to_hold() =>
        Assert.Equal(
            ["set-above-rating"],
            Edit(
                P2,
                P2 with
                {
                    Rating = Rated(90),
                    Relief = SetAt(90),
                },
                Empty with
                {
                    PressureSet = new(KPa(100), default),
                }
            )
        );

    [Theory]
    [InlineData(300, 250, false)]
    [InlineData(299, 250, true)] // no size below the contents
    [InlineData(600, 299, true)] // no working volume below the contents
    [InlineData(600, 300, false)]
    public void A_tank_does_not_shrink_below_what_is_in_it(double total, double working, bool isRefused)
    {
        var holding = After(Filled(300, P2).On(0)).Of(P2);
        var start = P2 with { Working = L(working is 250 ? 250 : 500) };

        Assert.Equal(
            isRefused,
            Edit(start, start with { Strapping = Straight(total), Working = L(working) }, holding)
                .Contains("smaller-than-contents")
        );
    }

    [Fact]
    public void A_tank_that_is_overfilled_already_may_get_a_new_name() =>
        Assert.Empty(Edit(P2, P2 with { Name = "by the door" }, After(Filled(550, P2).On(0)).Of(P2)));

    [Theory]
    [InlineData(500, 600, false)]
    [InlineData(600, 600, false)]
    [InlineData(601, 600, true)]
    [InlineData(0, 600, true)]
    public void The_working_volume_is_within_the_tank(double working, double total, bool isRefused) =>
        Assert.Equal(
            isRefused,
            New(P2 with { Working = L(working), Strapping = Straight(total) }).Contains("working-over-total")
        );

    [Fact]
    public void A_full_tank_is_not_retired_nor_one_under_pressure()
    {
        var retired = P2 with { RetiredOn = new DateOnly(2026, 3, 10) };

        Assert.Equal(["retiring-full"], Edit(P2, retired, After(Filled(300, P2).On(0)).Of(P2)));
        Assert.Equal(["holds-pressure"], Edit(P2, retired, Held(10)));
        Assert.Empty(Edit(P2, retired, Empty));
    }

    [Fact]
    public void Headspace_and_loan_make_sense()
    {
        Assert.Equal(["headspace-share"], New(K3 with { HeadspaceWanted = 0.51 }));
        Assert.Equal(
            ["loan-ends-first"],
            New(K3 with { OnLoanFrom = new DateOnly(2026, 5, 1), OnLoanUntil = new DateOnly(2026, 4, 1) })
        );
    }

    private static IEnumerable<string> New(Tank tank, Role role = Role.Owner) =>
        TankEdits.New(tank, role).Select(o => o.Code);

    private static IEnumerable<string> Edit(Tank before, Tank after, TankState state, Role role = Role.Owner) =>
        TankEdits.Objections(before, after, state, role).Select(o => o.Code);

    private static TankState Held(double kilopascals) => BeerTests.Sealed(Empty, kilopascals);

    private static Rating Rated(double kilopascals) => new(KPa(kilopascals), RatingSource.Plate);

    private static ReliefValve SetAt(double kilopascals) => new(KPa(kilopascals), new DateOnly(2025, 12, 1));
}
