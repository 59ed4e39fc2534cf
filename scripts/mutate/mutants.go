package main

import (
	"fmt"
	"go/ast"
	"go/token"
	"go/types"
	"strconv"
)

// mutant is one change to a file: the text between two offsets is replaced.
type mutant struct {
	file       string
	line       int
	start, end int
	with       string
	says       string
}

// finder collects the mutants of one file.
type finder struct {
	fset *token.FileSet
	info *types.Info
	name string
	text []byte
	all  []mutant
}

func (f *finder) add(n ast.Node, with, says string) {
	from, to := f.fset.Position(n.Pos()), f.fset.Position(n.End())
	f.all = append(f.all, mutant{f.name, from.Line, from.Offset, to.Offset, with, says})
}

func (f *finder) source(n ast.Node) string {
	return string(f.text[f.fset.Position(n.Pos()).Offset:f.fset.Position(n.End()).Offset])
}

// Visit implements ast.Visitor.
func (f *finder) Visit(n ast.Node) ast.Visitor {
	switch n := n.(type) {
	case *ast.GenDecl:
		if n.Tok == token.IMPORT || n.Tok == token.TYPE {
			return nil
		}
	case *ast.ReturnStmt:
		f.sizes(n.Results)
	case *ast.AssignStmt:
		f.sizes(n.Rhs)
	case *ast.KeyValueExpr:
		f.sizes([]ast.Expr{n.Value})
	case *ast.BasicLit:
		f.number(n)
	case *ast.BinaryExpr:
		f.sign(n)
	case *ast.SelectorExpr:
		f.method(n)
	}
	return f
}

// sizes makes lengths 1/16 in longer where they are what a formula comes to.
func (f *finder) sizes(list []ast.Expr) {
	for _, e := range list {
		if _, plain := e.(*ast.Ident); plain {
			continue // worked out elsewhere, and changed there
		}
		switch f.typeOf(e) {
		case "yardproof/schema/measure.Length":
			f.add(e, "("+f.source(e)+" + measure.Inch/16)", "1/16 in more: "+f.source(e))
		case "yardproof/schema/measure.Surd":
			f.add(e, "("+f.source(e)+").Add((measure.Inch/16).Surd())", "1/16 in more: "+f.source(e))
		}
	}
}

func (f *finder) typeOf(e ast.Expr) string {
	if t := f.info.TypeOf(e); t != nil {
		return t.String()
	}
	return ""
}

func (f *finder) number(n *ast.BasicLit) {
	if n.Kind != token.INT {
		return
	}
	value, err := strconv.ParseInt(n.Value, 0, 64)
	if err == nil {
		f.add(n, strconv.FormatInt(value+1, 10), fmt.Sprintf("%d for %d", value+1, value))
	}
}

// sign swaps plus and minus, and lets a limit itself fall on the other side.
func (f *finder) sign(n *ast.BinaryExpr) {
	other, ok := map[token.Token]token.Token{
		token.ADD: token.SUB, token.SUB: token.ADD,
		token.LSS: token.LEQ, token.LEQ: token.LSS, token.GTR: token.GEQ, token.GEQ: token.GTR,
	}[n.Op]
	if !ok || f.typeOf(n) == "string" || f.typeOf(n) == "untyped string" {
		return
	}
	at := f.fset.Position(n.OpPos)
	f.all = append(f.all, mutant{f.name, at.Line, at.Offset, at.Offset + len(n.Op.String()), other.String(), fmt.Sprintf("%s for %s: %s", other, n.Op, f.source(n))})
}

// method swaps operations of exact lengths.
func (f *finder) method(n *ast.SelectorExpr) {
	other, ok := map[string]string{"Add": "Sub", "Sub": "Add", "FloorTo": "CeilTo", "CeilTo": "FloorTo", "MulInt": "DivInt", "DivInt": "MulInt"}[n.Sel.Name]
	if ok && f.typeOf(n.X) == "yardproof/schema/measure.Surd" {
		f.add(n.Sel, other, fmt.Sprintf("%s for %s: %s", other, n.Sel.Name, f.source(n)))
	}
}
