using System.Globalization;
using System.Text;
using System.Text.Json;
using Fairlead.Model.Reading;

namespace Fairlead.Records;

/// <summary>JSON in the one form that a hash can be taken of: RFC 8785. Members stand in the order of their names' UTF-16 units, numbers as
/// ECMAScript writes a double, and nothing stands between.</summary>
public static class CanonicalJson
{
    private const string Hex = "0123456789abcdef";

    /// <summary>Reads JSON strictly: a name that stands twice, half a surrogate pair or a number beyond a double is no canonical JSON.</summary>
    /// <exception cref="FormatException">It is not JSON that has a canonical form.</exception>
    public static string Of(string json)
    {
        try
        {
            using var document = JsonDocument.Parse(json, new JsonDocumentOptions { AllowDuplicateProperties = false });
            return Of(document.RootElement);
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException or ArgumentException)
        {
            throw new FormatException("This is not JSON: " + e.Message, e);
        }
    }

    /// <summary>The canonical form of a value.</summary>
    /// <exception cref="FormatException">It has none.</exception>
    public static string Of(JsonElement value)
    {
        var text = new StringBuilder();
        Write(text, value);
        return text.ToString();
    }

    /// <summary>A double as ECMAScript writes it (RFC 8785 section 3.2.2.3): 1E21 is <c>1e+21</c>, 1E-6 is <c>0.000001</c>.</summary>
    /// <exception cref="FormatException">The number is not finite.</exception>
    public static string Number(double value)
    {
        if (!double.IsFinite(value))
        {
            throw new FormatException($"{value.ToString(CultureInfo.InvariantCulture)} has no form in JSON.");
        }

        if (value == 0)
        {
            return "0";
        }

        var parts = Math.Abs(value).ToString("R", CultureInfo.InvariantCulture).Split('E');
        var point = parts[0].IndexOf('.', StringComparison.Ordinal);
        var whole = point < 0 ? parts[0] : parts[0].Remove(point, 1);
        var digits = whole.TrimStart('0');
        var exponent = (point < 0 ? whole.Length : point) - (whole.Length - digits.Length) + (parts.Length > 1 ? int.Parse(parts[1], CultureInfo.InvariantCulture) : 0);
        return (value < 0 ? "-" : "") + Placed(digits.TrimEnd('0'), exponent);
    }

    /// <summary>A text with its quotation marks.</summary>
    /// <exception cref="FormatException">It holds half a surrogate pair.</exception>
    public static string Text(string value)
    {
        ArgumentNullException.ThrowIfNull(value);
        var text = new StringBuilder();
        Write(text, value);
        return text.ToString();
    }

    /// <summary>The bytes that are hashed.</summary>
    public static byte[] Bytes(string canonical) => StrictUtf8.Encoding.GetBytes(canonical);

    /// <summary>The text of some bytes, which must be UTF-8 throughout.</summary>
    /// <exception cref="FormatException">They are not.</exception>
    public static string FromBytes(ReadOnlySpan<byte> bytes)
    {
        try
        {
            return StrictUtf8.Encoding.GetString(bytes);
        }
        catch (DecoderFallbackException e)
        {
            throw new FormatException("The bytes are not UTF-8.", e);
        }
    }

    // The value is 0.digits times ten to the exponent.
    private static string Placed(string digits, int exponent)
    {
        if (exponent is > 0 and <= 21)
        {
            return digits.Length <= exponent ? digits.PadRight(exponent, '0') : digits.Insert(exponent, ".");
        }

        if (exponent is > -6 and <= 0)
        {
            return "0." + new string('0', -exponent) + digits;
        }

        var power = exponent - 1;
        return (digits.Length > 1 ? digits.Insert(1, ".") : digits) + (power < 0 ? "e-" : "e+") + Math.Abs(power).ToString(CultureInfo.InvariantCulture);
    }

    private static void Write(StringBuilder text, JsonElement value)
    {
        switch (value.ValueKind)
        {
            case JsonValueKind.Object:
                Write(text, '{', '}', value.EnumerateObject().OrderBy(p => p.Name, StringComparer.Ordinal), p =>
                {
                    Write(text, p.Name);
                    text.Append(':');
                    Write(text, p.Value);
                });
                break;
            case JsonValueKind.Array:
                Write(text, '[', ']', value.EnumerateArray(), item => Write(text, item));
                break;
            case JsonValueKind.String:
                Write(text, value.GetString()!);
                break;
            case JsonValueKind.Number:
                text.Append(Number(value.GetDouble()));
                break;
            default:
                text.Append(value.GetRawText());
                break;
        }
    }

    private static void Write<T>(StringBuilder text, char open, char close, IEnumerable<T> items, Action<T> write)
    {
        text.Append(open);
        var first = true;
        foreach (var item in items)
        {
            text.Append(first ? "" : ",");
            write(item);
            first = false;
        }

        text.Append(close);
    }

    private static void Write(StringBuilder text, string value)
    {
        text.Append('"');
        for (var i = 0; i < value.Length; i++)
        {
            var c = value[i];
            if (char.IsSurrogate(c) && !(char.IsHighSurrogate(c) ? i + 1 < value.Length && char.IsLowSurrogate(value[i + 1]) : i > 0 && char.IsHighSurrogate(value[i - 1])))
            {
                throw new FormatException("Half a surrogate pair has no form in JSON.");
            }

            _ = c switch
            {
                '"' or '\\' => text.Append('\\').Append(c),
                '\b' => text.Append("\\b"),
                '\t' => text.Append("\\t"),
                '\n' => text.Append("\\n"),
                '\f' => text.Append("\\f"),
                '\r' => text.Append("\\r"),
                < ' ' => text.Append("\\u00").Append(Hex[c >> 4]).Append(Hex[c & 15]),
                _ => text.Append(c),
            };
        }

        text.Append('"');
    }
}
