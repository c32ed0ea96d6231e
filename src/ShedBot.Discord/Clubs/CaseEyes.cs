using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Turns;

namespace ShedBot.Discord.Clubs;

/// <summary>Looks at cases by the rules in use now, without changing them.</summary>
internal sealed class CaseEyes(Parts parts)
{
    public async Task<Card?> OpenQuestionAsync(Case @case, CancellationToken ct)
    {
        var (coach, bike) = (await parts.Coaches.OfAsync(@case.Member, ct), await BikeAsync(@case, ct));
        return CaseLook.OpenQuestion(coach.Knowledge, coach.Options, @case, bike, parts.Clock.GetUtcNow());
    }

    public async Task<Card> BeliefAsync(Case @case, CancellationToken ct)
    {
        var (coach, bike) = (await parts.Coaches.OfAsync(@case.Member, ct), await BikeAsync(@case, ct));
        return CaseLook.Belief(coach.Knowledge, coach.Options, @case, bike, parts.Clock.GetUtcNow());
    }

    /// <inheritdoc cref="CaseLook.Aside"/>
    public async Task<Card?> AsideAsync(Case @case, string option, CancellationToken ct)
    {
        var (coach, bike) = (await parts.Coaches.OfAsync(@case.Member, ct), await BikeAsync(@case, ct));
        return CaseLook.Aside(coach.Knowledge, coach.Options, @case, bike, parts.Clock.GetUtcNow(), option);
    }

    private async Task<BikeProfile> BikeAsync(Case @case, CancellationToken ct) =>
        await parts.Store.FindBikeAsync(@case.Bike, ct) ?? BikeProfile.New(@case.Bike, @case.Member);
}
