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

    /// <summary>Whether a press on the open question was made when the club's rules were others: what it picked may be gone since, and it is not late all the same.</summary>
    public async Task<bool> OutdatesAsync(Case @case, string option, CancellationToken ct) =>
        OptionId.Read(option)?.Serial == @case.Open.Serial && (await parts.Coaches.OfAsync(@case.Member, ct)).Knowledge.Version != @case.KnowledgeVersion;

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
