namespace ElbowAssist.Imaging.Normalisation;

/// <summary>A value by its rank without sorting them all (Hoare, Algorithm 65: Find, Commun ACM 1961;4:321).</summary>
internal static class OrderStatistic
{
    /// <summary>The value that would stand at a rank from 0 if the values were in order; their order is lost.</summary>
    public static int Of(Span<int> values, int rank)
    {
        var (low, high) = (0, values.Length - 1);
        while (low < high)
        {
            var pivot = values[low + ((high - low) / 2)];
            var (i, j) = (low, high);
            while (i <= j)
            {
                while (values[i] < pivot)
                {
                    i++;
                }

                while (values[j] > pivot)
                {
                    j--;
                }

                if (i <= j)
                {
                    (values[i], values[j]) = (values[j], values[i]);
                    (i, j) = (i + 1, j - 1);
                }
            }

            if (rank > j && rank < i)
            {
                break;
            }

            (low, high) = rank <= j ? (low, j) : (i, high);
        }

        return values[rank];
    }
}
