using System.Text;

namespace Fairlead.Model.Reading;

/// <summary>UTF-8 as what comes from elsewhere is read, and what is hashed is written: bytes that are none are told and never replaced.</summary>
public static class StrictUtf8
{
    /// <summary>The encoding, without a mark. It throws <see cref="DecoderFallbackException"/> and <see cref="EncoderFallbackException"/>.</summary>
    public static UTF8Encoding Encoding { get; } = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);
}
