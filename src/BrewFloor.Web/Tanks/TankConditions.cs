using BrewFloor.Domain.Batches;
using BrewFloor.Domain.Cleaning;
using BrewFloor.Domain.Tanks;
using BrewFloor.Web.Drawing;
using UnitsNet;

namespace BrewFloor.Web.Tanks;

/// <summary>From how a tank is to how that is drawn.</summary>
public static class TankConditions
{
    private const double PaleEbc = 10; // a beer whose colour nobody typed

    public static TankCondition Of(Bay bay)
    {
        var state = bay.State;
        var volume = state.Contents.What is Holding.Nothing ? Volume.Zero : state.Contents.Volume;
        return new TankCondition
        {
            Volume = volume ?? Volume.Zero,
            IsVolumeUnknown = state.HoldsBeer && volume is null,
            ColourEbc = bay.Batch?.ColourEbc ?? PaleEbc,
            Stage = bay.Stage switch
            {
                Stage.Fermenting => DrawnStage.Fermenting,
                Stage.Finished => DrawnStage.Finished,
                Stage.Cold => DrawnStage.Cold,
                _ => DrawnStage.Filled,
            },
            Vigour = bay.IsFermentingHard ? DrawnVigour.Hard : DrawnVigour.Steady,
            Foam = bay.Stage is Stage.Fermenting ? bay.Tank.Total * 0.04 : Volume.Zero,
            Sediment = Sediment(bay),
            Soil = bay.Soil switch
            {
                Soil.Clean => DrawnSoil.Clean,
                Soil.Rinsed => DrawnSoil.Rinsed,
                Soil.Sanitized => DrawnSoil.Sanitized,
                _ => DrawnSoil.Soiled,
            },
            TideLine = bay.Tank.Working * 0.9,
            Pressure = state.IsPressureInDoubt ? null : state.Pressure?.Value,
            IsChilling = IsChilling(state),
            IsOutOfService = bay.IsOutOfService,
        };
    }

    // What lies in the cone isn't measured: so much per litre of beer as is usual (common practice, no source), less what was dumped.
    private static IReadOnlyList<DrawnSediment> Sediment(Bay bay)
    {
        if (bay is not { State.Contents.Volume: { } beer, BatchState: { } batch } || bay.Stage is Stage.Filled)
        {
            return [];
        }

        return
        [
            .. Layer(SedimentKind.Trub, beer * 0.01, batch, Domain.Batches.Sediment.Trub),
            .. batch.Pitches.Count > 0
                ? Layer(SedimentKind.Yeast, beer * 0.02, batch, Domain.Batches.Sediment.Yeast)
                : [],
            .. batch.DryHops.Count > 0
                ? Layer(SedimentKind.Hops, beer * 0.015, batch, Domain.Batches.Sediment.Hops)
                : [],
        ];
    }

    private static IEnumerable<DrawnSediment> Layer(
        SedimentKind kind,
        Volume usual,
        BatchState batch,
        Domain.Batches.Sediment what
    )
    {
        var dumped = batch.Dumps.Where(dump => dump.What == what).Sum(dump => dump.Volume.Liters);
        var left = usual.Liters - dumped;
        return left > 0.05 ? [new DrawnSediment(kind, Volume.FromLiters(left))] : [];
    }

    private static bool IsChilling(TankState state) =>
        state is { TemperatureSet: { } set, Temperature: { } read }
        && read.Value > set.Value + TemperatureDelta.FromDegreesCelsius(0.5);
}
