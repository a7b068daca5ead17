package config

import (
	"fmt"
	"io"
	"log/slog"
)

// Secret is a token. However it is printed, logged or encoded, its text does
// not show; only Reveal gives it. The zero value is not set.
type Secret struct {
	text *string  // behind a pointer, which even a printer that skips methods stops at
	env  string   // the variable that it may come from
	bad  *Finding // why it could not be read
}

// NewSecret hides a text.
func NewSecret(text string) Secret {
	if text == "" {
		return Secret{}
	}
	return Secret{text: &text}
}

// Reveal is the secret itself, empty when it is not set.
func (s Secret) Reveal() string {
	if s.text == nil {
		return ""
	}
	return *s.text
}

// IsSet reports whether there is one.
func (s Secret) IsSet() bool { return s.text != nil }

// String says whether there is a secret, and not which.
func (s Secret) String() string {
	if s.IsSet() {
		return "(secret)"
	}
	return "(not set)"
}

// Format prints String under every verb.
func (s Secret) Format(f fmt.State, _ rune) { io.WriteString(f, s.String()) }

// LogValue logs String.
func (s Secret) LogValue() slog.Value { return slog.StringValue(s.String()) }

// MarshalText encodes String.
func (s Secret) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// MarshalYAML encodes String.
func (s Secret) MarshalYAML() (any, error) { return s.String(), nil }
