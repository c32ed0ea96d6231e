namespace ShedBot.Coaching.Tests.Teaching;

/// <summary>Sheets filled in as a mechanic would; the causes are invented for these tests.</summary>
internal static class Filled
{
    /// <summary>A cause that the shipped rules do not know, from a known complaint to a new repair.</summary>
    public static Dictionary<string, string[]> Cause { get; } = new(StringComparer.Ordinal)
    {
        ["complaint"] = ["drags"],
        ["cause-is"] = ["a cable tie round the frame pinches the clutch cable"],
        ["cause-because"] = ["A tie that is pulled too tight flattens the casing. The wire binds in it, so the last part of the pull never arrives."],
        ["complaint-strength"] = ["likely"],
        ["common"] = ["uncommon"],
        ["sign"] = ["+new"],
        ["sign-means"] = ["the ties that hold the clutch cable to the frame"],
        ["sign-normal"] = ["They hold it loosely, I can slide the casing"],
        ["sign-seen"] = ["One is so tight that it dents the casing"],
        ["sign-strength"] = ["almost certain"],
        ["check-ask"] = ["Does a tie pinch the clutch cable anywhere on its way along the frame?"],
        ["check-why"] = ["A pinched casing holds the wire back."],
        ["check-how"] = ["Follow the cable from the lever to the arm.", "At each tie try to slide the casing with two fingers."],
        ["check-minutes"] = ["2"],
        ["check-hazard"] = ["none"],
        ["check-reliability"] = ["plain to see"],
        ["repair"] = ["+new"],
        ["repair-does"] = ["cut the tight tie and put a looser one on"],
        ["repair-steps"] = ["Cut the tie without touching the casing. -- Small side cutters, flat side to the casing.", "Put a new tie on so that the casing still slides."],
        ["repair-tools"] = ["side cutters"],
        ["repair-parts"] = ["cable tie: any that goes round frame and casing"],
        ["repair-minutes"] = ["5"],
        ["repair-money"] = ["0"],
        ["repair-cover"] = ["+none"],
        ["repair-hazard"] = ["low"],
        ["repair-caution"] = ["chain"],
        ["repair-prove"] = ["Lever in, the bike rolls and the engine stays still."],
        ["repair-prevent"] = ["Tie a cable so that it can slide."],
        ["repair-strength"] = ["very likely"],
        ["said-by"] = ["Ben of the Thursday rides"],
    };

    /// <summary>A cause of the shipped rules is commoner in this club.</summary>
    public static Dictionary<string, string[]> Commoner { get; } = new(StringComparer.Ordinal)
    {
        ["cause"] = ["slack-vanishes-hot"],
        ["what"] = ["+common"],
        ["common"] = ["common"],
    };

    /// <summary>A guard that comes off before something that is looked at already.</summary>
    public static Dictionary<string, string[]> Cover { get; } = new(StringComparer.Ordinal)
    {
        ["cover-called"] = ["the leg guard (two wing nuts)"],
        ["cover-how"] = ["Engine off and cold, plug cap off.", "Undo the two wing nuts and lift the guard away."],
        ["cover-minutes"] = ["2"],
        ["cover-behind"] = ["check measure-slack"],
    };

    /// <summary>A fact that nobody asks for yet, with what it makes likelier.</summary>
    public static Dictionary<string, string[]> Fact { get; } = new(StringComparer.Ordinal)
    {
        ["fact"] = ["+new"],
        ["fact-called"] = ["which clutch lever is fitted"],
        ["fact-ask"] = ["Is it the lever of the kit, or another one?"],
        ["fact-keeps"] = ["1000"],
        ["fact-answer-1"] = ["The lever of the kit"],
        ["fact-answer-1-often"] = ["very likely"],
        ["fact-answer-2"] = ["Another one, with a longer pull"],
        ["fact-answer-2-often"] = ["very unlikely"],
        ["fact-moves-1"] = ["slack-too-big"],
        ["fact-moves-1-value"] = ["Another one, with a longer pull"],
        ["fact-moves-1-times"] = ["0.2"],
    };

    /// <summary>A task that is due again and again, and once after something else.</summary>
    public static Dictionary<string, string[]> Task { get; } = new(StringComparer.Ordinal)
    {
        ["task-called"] = ["oil for the lever pivot"],
        ["task-does"] = ["put a drop of oil on the pivot of the clutch lever"],
        ["task-why"] = ["A dry pivot wears oval, and then the lever wobbles."],
        ["task-steps"] = ["Wipe the pivot. -- No grit left.", "One drop of thin oil, work the lever ten times, wipe off what runs out."],
        ["task-tools"] = ["thin oil"],
        ["task-minutes"] = ["3"],
        ["task-hazard"] = ["none"],
        ["task-when"] = ["+both"],
        ["task-every-in"] = ["riding days"],
        ["task-every"] = ["20"],
        ["task-latest"] = ["365"],
        ["task-event"] = ["fitted"],
        ["task-after-in"] = ["riding days"],
        ["task-after"] = ["5"],
        ["task-wet"] = ["2"],
        ["task-reveals"] = ["lever-heavy"],
    };

    /// <summary>The smaller sheets, each with what the shipped rules hold.</summary>
    public static TheoryData<string, string[]> Others { get; } = new()
    {
        { "strength", ["cause=slack-too-big", "what=+sign", "sign=drags", "word=very likely"] },
        { "strength", ["cause=slack-too-big", "what=+repair", "repair=set-slack", "word=very likely"] },
        { "wording", ["of=check", "rule=measure-slack", "part=ask", "text=How far can the end of the arm be moved before the wire is tight, with the lever out?"] },
        { "wording", ["of=repair", "rule=set-slack", "part=steps", "lines=Let the arm rest.\nSet the wire with a little slack. -- Measure it."] },
        { "phrase", ["of=complaint", "rule=drags", "add=it creeps off like an old lorry in neutral"] },
        { "how-to", ["called=how to park the kit for the winter", "asks=how do I lay it up for winter", "answer=Drain the tank.\nOil the chain.", "how-to-hazard=medium", "how-to-caution=petrol"] },
        { "retire", ["of=how-to", "rule=?", "because=We do it another way."] },
        { "wording", ["of=cover", "rule=arm-side-cover", "part=how", "lines=Engine off and cold, plug cap off, wire slackened at the arm.\nUndo the three screws evenly, a turn at a time."] },
        { "wording", ["of=fact", "rule=machine-age", "part=keeps for days", "number=90"] },
        { "wording", ["of=fact", "rule=machine-age", "part=values / settled / says", "text=Settled for a good while"] },
        { "wording", ["of=service", "rule=look-at-slack", "part=why", "text=The wire stretches and the pads wear, so the slack wanders."] },
        { "phrase", ["of=fact", "rule=machine-age", "state=new-build", "add=just out of the box"] },
        { "phrase", ["of=word", "rule=clutch", "add=the grabby thing"] },
        {
            "check",
            [
                "finding=slack-now", "check-ask=With the lever out, can you see daylight between the wire and its stop?", "check-why=Daylight there is slack.", "check-minutes=1",
                "check-hazard=none", "check-reliability=easy to misread",
            ]
        },
    };
}
