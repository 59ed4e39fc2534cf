package diag

import (
	"encoding/json"
	"errors"
	"fmt"
	"strings"
)

// JSONFault says what is wrong with a JSON text that is not one of ours, in
// words for whoever wrote it: an error of encoding/json names types of the
// program.
func JSONFault(err error) error {
	var kind *json.UnmarshalTypeError
	if !errors.As(err, &kind) {
		return errors.New(strings.TrimPrefix(err.Error(), "json: "))
	}
	if kind.Field == "" {
		return fmt.Errorf("a JSON %s does not belong there", kind.Value)
	}
	return fmt.Errorf("a JSON %s does not belong at %q", kind.Value, kind.Field)
}
