namespace Fairlead.Server.Hosting;

/// <summary>The bytes of a request.</summary>
internal static class Body
{
    /// <summary>All of them; null when there are more than a number.</summary>
    public static async Task<byte[]?> Read(HttpRequest request, int most, CancellationToken stop)
    {
        var (all, part) = (new MemoryStream(), new byte[81920]);
        while (await request.Body.ReadAsync(part, stop) is > 0 and var count)
        {
            if (all.Length + count > most)
            {
                return null;
            }

            all.Write(part, 0, count);
        }

        return all.ToArray();
    }
}
