namespace ShedBot.Reasoning.Planning;

/// <summary>A rule for choosing the next step.</summary>
public enum Policy
{
    /// <summary>What <see cref="Planner"/> does: exact where that is quick, looking ahead elsewhere.</summary>
    Shipped,

    /// <summary>Looking ahead always: what <see cref="Planner"/> does where a problem is too large to be planned exactly.</summary>
    LookAhead,

    /// <summary>Check now against check never (Heckerman, Breese and Rommelse 1995).</summary>
    OneStep,

    /// <summary>No checks; repairs in p / C order, help at the best moment.</summary>
    RepairsOnly,

    /// <summary>No checks; every repair in an order drawn at random, averaged exactly over all orders, then help.</summary>
    RandomOrder,
}
