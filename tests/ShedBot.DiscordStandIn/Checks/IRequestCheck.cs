namespace ShedBot.DiscordStandIn.Checks;

/// <summary>A strict rule every request to the stand-in is held against, whether or not the real platform would refuse it.</summary>
public interface IRequestCheck
{
    /// <summary>What is wrong with this request, one sentence each; empty when nothing is. Must not throw and must not keep the body.</summary>
    IEnumerable<string> Violations(CheckedRequest request);
}
