using System.Collections.Frozen;

namespace ShedBot.Knowledge.Understanding.Answers;

/// <summary>How riders answer without an option: plain words, as the whole of what is said or as its beginning.</summary>
internal static class AnswerWords
{
    /// <summary>Said with nothing or little after it. Fillers are left out before comparing; longest first.</summary>
    public static readonly (AnswerKind Kind, string[] Words)[] Kinds =
    [
        (AnswerKind.NotSure, Split("not sure|unsure|dunno|dont know|don't know|do not know|idk|no idea|no clue|not a clue|havent a clue|haven't a clue|havent got a clue|haven't got a clue|aint got a clue|ain't got a clue|dont have a clue|don't have a clue|not got a clue|no earthly|havent the foggiest|haven't the foggiest|not the foggiest|search me|god knows|god only knows|how should i know|how would i know|couldnt tell you|couldn't tell you|clueless|cant tell|can't tell|cannot tell|hard to tell|hard to say|difficult to say|who knows|beats me|maybe|might be|possibly|couldnt say|couldn't say|not certain|uncertain|dont remember|don't remember|cant remember|can't remember|forgot|i forget|no memory|could be either|either|?|??|???|not really sure|havent noticed|haven't noticed|never noticed|didnt notice|didn't notice|never looked|pass")),
        (AnswerKind.Cannot, Split("cant|can't|cannot|can not|cant do that|can't do that|cannot do that|cant do it|can't do it|cannot do it|cant do this|can't do this|cannot do this|cant do this one|can't do this one|couldnt do it|couldn't do it|cant check|can't check|cannot check|unable|not able to|cant get at it|can't get at it|cant get to it|can't get to it|cant reach|can't reach|cant see it|can't see it|cant look|can't look|not now|not right now|later|not at home|away from the bike|bike isnt here|bike isn't here|bike is not here|not with the bike|at work|no tools|dont have the tool|don't have the tool|havent got the tool|haven't got the tool|no spanner|no screwdriver|no puller|havent got a|haven't got a|dont have a|don't have a|skip|skip it|skip that|skip this|next|too dark|its raining|it's raining|raining|tomorrow|wont come off|won't come off|cant get it off|can't get it off|cant open|can't open|dont want to|don't want to|rather not|too hard")),
        (AnswerKind.Back, Split("back|go back|undo|oops|whoops|wrong answer|i was wrong|got that wrong|got it wrong|mistake|made a mistake|my mistake|previous|last one was wrong|change my answer|change my last answer|take that back|scratch that|correction|wait no|that was wrong|step back|i meant something else|misclicked|mispressed|pressed the wrong")),
        (AnswerKind.Why, Split("why|why do you ask|why you ask|why ask|why does that matter|why is that important|why that|why this|why bother|what for|what has that to do|whats that got to do|what's that got to do|what does that tell you|what difference does|how does that help|reason|whats the point|what's the point|how come")),
        (AnswerKind.ShowMe, Split("show me|show me how|show|how|how do i|how do you|how to|how can i|how would i|how should i|where is|where's|wheres|where do i|where|which one is|what is|whats|what's|whats that|what's that|what does it look like|what does that look like|what do you mean|dont understand|don't understand|do not understand|dont get it|don't get it|explain|picture|drawing|diagram|more detail|more help|help|help me|huh|eh|say again|come again|pardon|never heard of|never done that|dont know how|don't know how|not sure how|no idea how|no idea what|dont know what|don't know what|not sure what|dont know where|don't know where|not sure where|in other words|lost me|confused|im lost|i'm lost")),
        (AnswerKind.Stop, Split("stop|quit|exit|close|cancel|forget it|never mind|nevermind|leave|leave now|i want to leave|leave it|enough|give up|i give up|giving up|im done|i'm done|done for today|bye|end|abort|drop it|call it a day|leave me alone|no more questions|stop asking|thats all|that's all|end this|close it|close this|goodbye")),
    ];

    public static readonly FrozenSet<string> Yes = Split("yes|y|yeah|yea|yep|yup|aye|ya|yh|ye|yess|sure|sure is|sure does|correct|right|true|affirmative|indeed|absolutely|definitely|it does|it is|does|it did|i did|i have|i think so|think so|i believe so|i guess so|i guess|guess so|suppose so|yes it does|yes it is|of course|exactly|ok|okay|uh huh|yes please|yessir|totally|for sure|100%|spot on|thats right|that's right|thats it|that's it|👍|✅|done|ready|all good|kinda|sort of|a bit|mostly|more or less|yeah kinda").ToFrozenSet();

    public static readonly FrozenSet<string> No = Split("no|n|nope|nah|naw|nay|negative|not really|no way|never|it doesnt|it doesn't|it does not|doesnt|doesn't|it isnt|it isn't|isnt|isn't|it didnt|it didn't|i didnt|i didn't|havent|haven't|i havent|i haven't|dont think so|don't think so|i dont think so|i don't think so|not at all|none|nothing|false|wrong|not yet|hasnt|hasn't|no it doesnt|no it doesn't|nothing like that|👎|❌").ToFrozenSet();

    /// <summary>Words that point at an option by its place, from 0; -1 is the last.</summary>
    public static readonly FrozenDictionary<string, int> Places = new Dictionary<string, int>
    {
        ["1"] = 0,
        ["2"] = 1,
        ["3"] = 2,
        ["4"] = 3,
        ["5"] = 4,
        ["6"] = 5,
        ["7"] = 6,
        ["8"] = 7,
        ["9"] = 8,
        ["1st"] = 0,
        ["2nd"] = 1,
        ["3rd"] = 2,
        ["4th"] = 3,
        ["5th"] = 4,
        ["a"] = 0,
        ["b"] = 1,
        ["c"] = 2,
        ["d"] = 3,
        ["one"] = 0,
        ["two"] = 1,
        ["three"] = 2,
        ["four"] = 3,
        ["five"] = 4,
        ["first"] = 0,
        ["second"] = 1,
        ["third"] = 2,
        ["fourth"] = 3,
        ["fifth"] = 4,
        ["last"] = -1,
        ["top"] = 0,
        ["bottom"] = -1,
    }.ToFrozenDictionary();

    /// <summary>What may stand around a place without changing it: "the second one please".</summary>
    public static readonly FrozenSet<string> AroundPlaces = Split("the|one|option|number|answer|no|nr|choice|please|its|it's|it|is|id|i'd|say|go|with|for|i|pick|choose|take|that|would|be|i'm|im|definitely|probably|think|reckon|letter|#|maybe").ToFrozenSet();

    /// <summary>Softeners, which lower the score: "yeah kinda".</summary>
    public static readonly FrozenSet<string> Softeners = Split("kinda|kind|sorta|sort|bit|think|guess|probably|maybe|reckon|suppose|mostly|ish|possibly|perhaps|believe|seems|roughly|less").ToFrozenSet();

    private static string[] Split(string words) => words.Split('|');
}
