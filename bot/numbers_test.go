package bot

import "testing"

// A spreadsheet computes nothing of what somebody said, and commas and quotes
// stay within their field.
func TestNumbersCSV(t *testing.T) {
	got := NumbersCSV([]Number{{"topic", "net contact", 4}, {"not read", "=1+1", 1}, {"not read", `a "phrase", odd`, 2}, {"not read", "-x", 1}})
	want := "counted,value,number\ntopic,net contact,4\nnot read,'=1+1,1\nnot read,\"a \"\"phrase\"\", odd\",2\nnot read,'-x,1\n"
	if got != want {
		t.Errorf("%q, want %q", got, want)
	}
}
