namespace Framing.Nights;

/// <summary>How many subs to shoot so that enough are good.</summary>
public static class SubCount
{
    /// <summary>The subs to shoot so that as many as needed are good on average.</summary>
    /// <param name="good">Good subs wanted, 0 or more.</param>
    /// <param name="loss">The share that is lost, 0 to less than 1.</param>
    /// <returns>Whole subs: in half of the nights it is too few.</returns>
    public static int OnAverage(int good, double loss) =>
        (int)Math.Ceiling((good / (1.0 - Checked(loss))) - 1e-9);

    /// <summary>The subs to shoot so that as many as needed are good with a chance.</summary>
    /// <param name="good">Good subs wanted, 0 or more.</param>
    /// <param name="loss">The share that is lost, 0 to less than 1, each sub for itself.</param>
    /// <param name="chance">The chance, 0 to less than 1.</param>
    /// <returns>Whole subs: the smallest number whose binomial tail reaches the chance.</returns>
    public static int ForChance(int good, double loss, double chance)
    {
        Checked(loss);
        if (chance is not (>= 0.0 and < 1.0))
        {
            throw new ArgumentOutOfRangeException(
                nameof(chance),
                chance,
                "A chance lies between 0 and 1."
            );
        }

        // The chance that the last needed sub is good at the n-th try, summed up: C(n-1, good-1) (1-loss)^good loss^(n-good).
        var log = good * Math.Log(1.0 - loss);
        var sum = Math.Exp(log);
        var n = good;
        while (sum < chance && n < 1_000_000)
        {
            n++;
            log += Math.Log(loss) + Math.Log((n - 1.0) / (n - good));
            sum += Math.Exp(log);
        }

        return n;
    }

    private static double Checked(double loss) =>
        loss is >= 0.0 and < 1.0
            ? loss
            : throw new ArgumentOutOfRangeException(
                nameof(loss),
                loss,
                "A loss lies between 0 and 1."
            );
}
